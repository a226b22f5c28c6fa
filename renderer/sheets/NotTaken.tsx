import { useState } from 'react';
import { Button } from '../ui/Button.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './NotTaken.module.css';
import { notTakenReasons } from './not-taken-reasons.ts';

interface NotTakenProps {
  readonly onReason: (reason: string) => void;
}

/** Why a reading is not there: one tap, or a word of one's own. */
export function NotTaken({ onReason }: NotTakenProps) {
  const [own, setOwn] = useState('');
  return (
    <fieldset className={styles.reasons}>
      <legend className="spoken-only">Not taken, because</legend>
      {notTakenReasons.map((reason) => (
        <Button key={reason} onPress={() => onReason(reason)}>
          {reason}
        </Button>
      ))}
      <div className={styles.own}>
        <TextField label="Another reason" value={own} onChange={setOwn} maxLength={400} />
        <Button disabled={own.trim() === ''} onPress={() => onReason(own.trim())}>
          Say so
        </Button>
      </div>
    </fieldset>
  );
}
