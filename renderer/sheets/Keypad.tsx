import type { PointerEvent } from 'react';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { fieldUnit } from '../../shared-lib/readings/shop-unit.ts';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { KeyCap } from '../ui/KeyCap.tsx';
import painted from '../ui/painted.module.css';
import styles from './Keypad.module.css';
import type { SheetField } from './sheet-field.ts';

interface KeypadProps {
  /** Of the sheet's fields, the one that has the focus. */
  readonly field: SheetField | null;
  /** What stands in it. */
  readonly text: string;
  readonly system: UnitSystem;
  readonly onClose: () => void;
}

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0'] as const;
/** A difference below nothing, numbers beside each other, and what one can be off by. */
const marks = [
  { typed: '-', shown: '−', name: 'Minus' },
  { typed: '/', shown: '/', name: 'Stroke' },
  { typed: '±', shown: '±', name: 'Plus or minus' },
] as const;

/** A touch has no keys of its own; with a mouse and a keyboard they would only take room. */
export const isTouched = (): boolean => globalThis.matchMedia?.('(pointer: coarse)').matches === true;

type Typed = HTMLInputElement | HTMLTextAreaElement;

const put = (input: Typed, text: string, from: number) => {
  input.setRangeText(text, from, input.selectionEnd ?? from, 'end');
  input.dispatchEvent(new Event('input', { bubbles: true }));
};

const type = (text: string) => (input: Typed) => put(input, text, input.selectionStart ?? input.value.length);

const back = (input: Typed) => {
  const [start, end] = [input.selectionStart ?? 0, input.selectionEnd ?? 0];
  put(input, '', start === end ? Math.max(0, start - 1) : start);
};

const goOn = (input: Typed) => input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));

/**
 * Big digits for a gloved finger, beside the sheet: they hide no field, and what they type stands large above them. They
 * type into the field in hand and never take the focus from it.
 */
export function Keypad({ field, text, system, onClose }: KeypadProps) {
  // The field in hand keeps the focus and its caret; React hears of what is put in as if it were typed.
  const press = (act: (input: Typed) => void) => (event: PointerEvent) => {
    event.preventDefault();
    const input = document.activeElement;
    const takesText =
      (input instanceof HTMLInputElement && input.type === 'text') || input instanceof HTMLTextAreaElement;
    if (field !== null && takesText) act(input);
  };
  return (
    <aside className={styles.pad} aria-label="Number keys">
      <p className={styles.readout} data-in-hand={field === null ? undefined : ''} aria-hidden="true">
        <span className={styles.label}>{field === null ? 'Touch a field' : field.spec.label}</span>
        <span className={styles.text}>{text}</span>
        {field !== null && <span className={styles.unit}>{fieldUnit(field.spec, system)}</span>}
      </p>
      <div className={styles.keys}>
        {keys.map((key) => (
          <button key={key} type="button" tabIndex={-1} className={styles.key} onPointerDown={press(type(key))}>
            {key}
          </button>
        ))}
        <button type="button" tabIndex={-1} className={styles.key} onPointerDown={press(back)}>
          Back
        </button>
        {marks.map(({ typed, shown, name }) => (
          <button
            key={typed}
            type="button"
            tabIndex={-1}
            className={classNames(styles.key, styles.mark)}
            aria-label={name}
            onPointerDown={press(type(typed))}
          >
            {shown}
          </button>
        ))}
      </div>
      <button
        type="button"
        tabIndex={-1}
        className={classNames(styles.next, painted.painted)}
        onPointerDown={press(goOn)}
      >
        Next <KeyCap of="Enter" />
      </button>
      <Button look="link" onPress={onClose}>
        Put the number keys away
      </Button>
    </aside>
  );
}
