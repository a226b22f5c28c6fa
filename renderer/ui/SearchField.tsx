import type { KeyboardEvent, Ref } from 'react';
import { Icon } from './Icon.tsx';
import styles from './SearchField.module.css';

interface SearchFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly onKeyDown?: ((event: KeyboardEvent<HTMLInputElement>) => void) | undefined;
  readonly ref?: Ref<HTMLInputElement> | undefined;
}

/** One search over everything; Escape empties it. */
export function SearchField({ label, value, onChange, onKeyDown, ref }: SearchFieldProps) {
  const handleKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Escape' && value !== '') {
      event.preventDefault();
      event.stopPropagation();
      onChange('');
      return;
    }
    onKeyDown?.(event);
  };
  return (
    <label className={styles.box}>
      <Icon name="search" size={28} />
      <input
        ref={ref}
        type="search"
        className={styles.input}
        aria-label={label}
        placeholder={label}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        onKeyDown={handleKeyDown}
        autoComplete="off"
        spellCheck={false}
      />
      {value !== '' && (
        <button type="button" className={styles.clear} onClick={() => onChange('')} aria-label="Empty the search">
          <Icon name="close" size={18} />
        </button>
      )}
    </label>
  );
}
