import { type ReactNode, useId } from 'react';
import { classNames } from './class-names.ts';
import { ErrorNote, type ErrorWords } from './ErrorNote.tsx';
import styles from './Field.module.css';

interface FieldIds {
  readonly inputId: string;
  /** What a reader that speaks the screen says after the label. */
  readonly describedBy: string | undefined;
}

interface FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: ErrorWords | undefined;
  /** Stands right of the box: last visit's value, a quick choice. */
  readonly beside?: ReactNode;
  readonly className?: string | undefined;
  readonly children: (ids: FieldIds) => ReactNode;
}

/** Label, box, and what is to be said of it at its place. */
export function Field({ label, hint, error, beside, className, children }: FieldProps) {
  const inputId = useId();
  const hintId = `${inputId}-hint`;
  const errorId = `${inputId}-error`;
  const describedBy = classNames(hint !== undefined && hintId, error !== undefined && errorId) || undefined;
  return (
    <div className={classNames(styles.field, error !== undefined && styles.wrong, className)}>
      <label className={styles.label} htmlFor={inputId}>
        {label}
      </label>
      <div className={styles.row}>
        {children({ inputId, describedBy })}
        {beside}
      </div>
      {hint !== undefined && (
        <p id={hintId} className={styles.hint}>
          {hint}
        </p>
      )}
      {error !== undefined && <ErrorNote id={errorId} {...error} />}
    </div>
  );
}
