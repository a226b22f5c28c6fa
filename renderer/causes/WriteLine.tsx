import { type FormEvent, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './CausesPage.module.css';

interface WriteLineProps {
  readonly label: string;
  readonly placeholder: string;
  readonly button: string;
  readonly isRunning: boolean;
  readonly autoFocus?: boolean | undefined;
  /** `onDone` empties the line; until then what was typed stays. */
  readonly onWrite: (text: string, onDone: () => void) => void;
}

/** One line and Enter. */
export function WriteLine({ label, placeholder, button, isRunning, autoFocus, onWrite }: WriteLineProps) {
  const [text, setText] = useState('');
  const isEmpty = text.trim() === '';
  const write = (event: FormEvent) => {
    event.preventDefault();
    if (!isEmpty && !isRunning) onWrite(text.trim(), () => setText(''));
  };
  return (
    <form className={styles.write} onSubmit={write}>
      <TextField
        label={label}
        value={text}
        onChange={setText}
        placeholder={placeholder}
        autoFocus={autoFocus}
        maxLength={400}
      />
      <Button type="submit" disabled={isEmpty || isRunning}>
        {button}
      </Button>
    </form>
  );
}
