import type { KeyboardEvent, ReactNode, Ref } from 'react';
import { classNames } from './class-names.ts';
import type { ErrorWords } from './ErrorNote.tsx';
import styles from './Field.module.css';
import { Field } from './Field.tsx';
import { useDraft } from './use-draft.ts';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  /** Every keystroke: for a form that is handed over as a whole. */
  readonly onChange?: ((text: string) => void) | undefined;
  /** On leaving the field, or Enter: for a record that is saved as it is typed. Escape takes the draft back. */
  readonly onCommit?: ((text: string) => void) | undefined;
  readonly hint?: string | undefined;
  readonly error?: ErrorWords | undefined;
  readonly beside?: ReactNode;
  readonly placeholder?: string | undefined;
  readonly unit?: string | undefined;
  readonly lines?: 'one' | 'many' | undefined;
  readonly digits?: boolean | undefined;
  readonly maxLength?: number | undefined;
  readonly autoFocus?: boolean | undefined;
  readonly className?: string | undefined;
  readonly ref?: Ref<HTMLInputElement & HTMLTextAreaElement> | undefined;
}

/** A line or some lines of text. There is no save button: what was typed is kept on leaving. */
export function TextField(props: TextFieldProps) {
  const { label, value, onChange, onCommit, hint, error, beside, unit, lines = 'one', digits = false } = props;
  const draft = useDraft(value);

  const commit = () => {
    if (!draft.isChanged || onCommit === undefined) return;
    draft.handOver();
    onCommit(draft.shown);
  };
  const handleKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && (lines === 'one' || event.ctrlKey)) commit();
    if (event.key === 'Escape' && draft.isChanged && onCommit !== undefined) {
      event.stopPropagation();
      draft.drop();
    }
  };

  return (
    <Field label={label} hint={hint} error={error} beside={beside} className={props.className}>
      {({ inputId, describedBy }) => {
        const shared = {
          id: inputId,
          'aria-describedby': describedBy,
          'aria-invalid': error !== undefined,
          value: draft.shown,
          placeholder: props.placeholder,
          maxLength: props.maxLength,
          autoFocus: props.autoFocus,
          ref: props.ref,
          onChange: (event: { target: { value: string } }) => {
            draft.type(event.target.value);
            onChange?.(event.target.value);
          },
          onBlur: commit,
          onKeyDown: handleKeyDown,
        };
        return (
          <label className={styles.box} htmlFor={inputId}>
            {lines === 'many' ? (
              <textarea {...shared} rows={2} className={classNames(styles.input, styles.area)} />
            ) : (
              <input
                {...shared}
                type="text"
                inputMode={digits ? 'decimal' : 'text'}
                autoComplete="off"
                spellCheck={!digits}
                className={classNames(styles.input, digits && styles.number)}
              />
            )}
            {unit !== undefined && <span className={styles.unit}>{unit}</span>}
          </label>
        );
      }}
    </Field>
  );
}
