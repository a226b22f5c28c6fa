import { useEffect, useRef } from 'react';
import type { DecisionKind } from '../../shared-lib/choices/records.ts';
import type { Ending } from '../../shared-lib/choices/statement.ts';
import { useCommand } from '../app/command-keys.ts';
import { KeyCap } from '../ui/KeyCap.tsx';
import styles from './Endings.module.css';

interface EndingsProps {
  readonly endings: readonly Ending[];
  readonly picked: DecisionKind | null;
  readonly completed: string;
  readonly onPick: (decision: DecisionKind) => void;
  readonly onComplete: (words: string) => void;
}

/** The ways the statement can end: lines of equal weight, none taken beforehand. */
export function Endings({ endings, picked, completed, onPick, onComplete }: EndingsProps) {
  const pickAt = (index: number) => {
    const ending = endings[index];
    if (ending !== undefined) onPick(ending.decision);
  };
  useCommand('ending.first', () => pickAt(0));
  useCommand('ending.second', () => pickAt(1));
  useCommand('ending.third', () => pickAt(2));
  useCommand('ending.fourth', () => pickAt(3));
  return (
    <ul className={styles.endings} aria-label="How it can end">
      {endings.map(({ decision, words, asks }, index) => (
        <li key={decision} className={styles.ending}>
          <button
            type="button"
            className={styles.pick}
            aria-pressed={picked === decision}
            onClick={() => onPick(decision)}
          >
            <KeyCap of={String(index + 1)} />
            <span>
              {words}
              {asks === null && '.'}
            </span>
          </button>
          {asks !== null &&
            (picked === decision ? (
              <CompletedLine key={decision} label={asks} value={completed} onChange={onComplete} />
            ) : (
              <span className={styles.dots} />
            ))}
        </li>
      ))}
    </ul>
  );
}

interface CompletedLineProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (words: string) => void;
}

function CompletedLine({ label, value, onChange }: CompletedLineProps) {
  const line = useRef<HTMLInputElement>(null);
  // Picked by its key or by touch, the next thing said is how it goes on.
  useEffect(() => line.current?.focus(), []);
  return (
    <input
      ref={line}
      type="text"
      className={styles.line}
      aria-label={label}
      maxLength={400}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    />
  );
}
