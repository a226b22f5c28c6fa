import { type PointerEvent, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import styles from './Keypad.module.css';
import type { SheetField } from './sheet-field.ts';
import type { SheetDraft } from './use-sheet-draft.ts';

interface KeypadProps {
  readonly field: SheetField | null;
  readonly draft: SheetDraft;
  readonly onNext: (from: HTMLElement) => void;
  readonly label: string;
}

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '/'] as const;

/** A touch has no keys of its own; with a mouse and a keyboard they would only take room. */
const isTouched = (): boolean => globalThis.matchMedia?.('(pointer: coarse)').matches === true;

/** Big digits for a gloved finger. They type into the field in hand and never take the focus from it. */
export function Keypad({ field, draft, onNext, label }: KeypadProps) {
  const [isOpen, setOpen] = useState(isTouched);
  const press = (event: PointerEvent, act: (field: SheetField) => void) => {
    event.preventDefault();
    if (field !== null && field.spec.kind !== 'choice') act(field);
  };
  const type = (text: string) => (event: PointerEvent) =>
    press(event, (into) => draft.type(into, `${draft.textOf(into)}${text}`));
  return (
    <div className={styles.pad} data-open={isOpen ? '' : undefined}>
      <Button look="link" onPress={() => setOpen(!isOpen)} expanded={isOpen}>
        {isOpen ? 'Put the number keys away' : 'Number keys on the screen'}
      </Button>
      {isOpen && (
        <fieldset className={styles.keys}>
          <legend className="spoken-only">Number keys, {label}</legend>
          {keys.map((key) => (
            <button key={key} type="button" tabIndex={-1} className={styles.key} onPointerDown={type(key)}>
              {key}
            </button>
          ))}
          <button type="button" tabIndex={-1} className={styles.key} onPointerDown={type('-')} aria-label="Minus">
            −
          </button>
          <button
            type="button"
            tabIndex={-1}
            className={styles.key}
            onPointerDown={(event) => press(event, (into) => draft.type(into, draft.textOf(into).slice(0, -1)))}
          >
            Back
          </button>
          <button
            type="button"
            tabIndex={-1}
            className={styles.key}
            onPointerDown={(event) =>
              press(event, () => {
                if (document.activeElement instanceof HTMLElement) onNext(document.activeElement);
              })
            }
          >
            Next
          </button>
        </fieldset>
      )}
    </div>
  );
}
