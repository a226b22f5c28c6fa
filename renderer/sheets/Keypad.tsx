import { type PointerEvent, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import styles from './Keypad.module.css';

interface KeypadProps {
  /** A field of the sheet has the focus. */
  readonly isInHand: boolean;
  readonly label: string;
}

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '/'] as const;

/** A touch has no keys of its own; with a mouse and a keyboard they would only take room. */
const isTouched = (): boolean => globalThis.matchMedia?.('(pointer: coarse)').matches === true;

/** Big digits for a gloved finger. They type into the field in hand and never take the focus from it. */
export function Keypad({ isInHand, label }: KeypadProps) {
  const [isOpen, setOpen] = useState(isTouched);
  // The field in hand keeps the focus and its caret; React hears of what is put in as if it were typed.
  const press = (event: PointerEvent, act: (input: HTMLInputElement | HTMLTextAreaElement) => void) => {
    event.preventDefault();
    const input = document.activeElement;
    const takesText =
      (input instanceof HTMLInputElement && input.type === 'text') || input instanceof HTMLTextAreaElement;
    if (isInHand && takesText) act(input);
  };
  const put = (input: HTMLInputElement | HTMLTextAreaElement, text: string, from: number) => {
    input.setRangeText(text, from, input.selectionEnd ?? from, 'end');
    input.dispatchEvent(new Event('input', { bubbles: true }));
  };
  const type = (text: string) => (event: PointerEvent) =>
    press(event, (input) => put(input, text, input.selectionStart ?? input.value.length));
  const back = (event: PointerEvent) =>
    press(event, (input) => {
      const [start, end] = [input.selectionStart ?? 0, input.selectionEnd ?? 0];
      put(input, '', start === end ? Math.max(0, start - 1) : start);
    });
  const goOn = (event: PointerEvent) =>
    press(event, (input) => input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })));
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
          <button type="button" tabIndex={-1} className={styles.key} onPointerDown={back}>
            Back
          </button>
          <button type="button" tabIndex={-1} className={styles.key} onPointerDown={goOn}>
            Next
          </button>
        </fieldset>
      )}
    </div>
  );
}
