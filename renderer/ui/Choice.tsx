import { type KeyboardEvent, useId, useRef } from 'react';
import styles from './Choice.module.css';
import { classNames } from './class-names.ts';
import { ErrorNote, type ErrorWords } from './ErrorNote.tsx';
import { KeyCap } from './KeyCap.tsx';

export interface ChoiceOption<T extends string> {
  readonly value: T;
  readonly words: string;
  readonly note?: string | undefined;
  /** Picks it while the group has the focus. */
  readonly keyCap?: string | undefined;
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly ChoiceOption<T>[];
  /** Null while nothing is chosen: no option is taken for granted. */
  readonly value: T | null;
  readonly onChoose: (value: T) => void;
  readonly hint?: string | undefined;
  readonly error?: ErrorWords | undefined;
  readonly layout?: 'row' | 'column' | undefined;
  readonly hideLabel?: boolean | undefined;
}

/** One of a few. Arrow keys move, an option's own key picks it. */
export function Choice<T extends string>(props: ChoiceProps<T>) {
  const { label, options, value, onChoose, hint, error, layout = 'row', hideLabel = false } = props;
  const name = useId();
  const group = useRef<HTMLFieldSetElement>(null);

  const handleKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const picked = options.find((option) => option.keyCap?.toLowerCase() === event.key.toLowerCase());
    if (picked === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    onChoose(picked.value);
    group.current?.querySelector<HTMLInputElement>(`input[value="${CSS.escape(picked.value)}"]`)?.focus();
  };

  return (
    <fieldset ref={group} className={styles.group} onKeyDown={handleKeyDown}>
      <legend className={hideLabel ? 'spoken-only' : styles.legend}>{label}</legend>
      <div className={classNames(styles.options, layout === 'column' && styles.column)}>
        {options.map((option) => (
          <label key={option.value} className={styles.option}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChoose(option.value)}
              className={styles.input}
            />
            {option.keyCap !== undefined && <KeyCap of={option.keyCap} />}
            <span className={styles.words}>
              {option.words}
              {option.note !== undefined && <span className={styles.note}>{option.note}</span>}
            </span>
          </label>
        ))}
      </div>
      {hint !== undefined && <p className={styles.hint}>{hint}</p>}
      {error !== undefined && <ErrorNote {...error} />}
    </fieldset>
  );
}
