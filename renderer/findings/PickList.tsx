import type { KeyboardEvent, ReactNode } from 'react';
import { alongColumn, moveFocus } from '../ui/move-focus.ts';
import { TextField } from '../ui/TextField.tsx';
import styles from './PlacePicker.module.css';

export interface PickOption {
  readonly key: string;
  readonly words: ReactNode;
  readonly onPress: () => void;
}

interface PickListProps {
  readonly label: string;
  readonly placeholder: string;
  readonly typed: string;
  readonly onType: (text: string) => void;
  readonly maxLength: number;
  readonly autoFocus?: boolean | undefined;
  readonly options: readonly PickOption[];
  /** What Enter takes: the first by what is typed, which may be ahead of what is drawn. */
  readonly first: () => PickOption | undefined;
  /** Said where nothing is found. */
  readonly none: string;
  /** Between the field and the list. */
  readonly children?: ReactNode;
}

/** Found by typing: Enter takes the first, arrows go down the list and back, Tab passes it. */
export function PickList(props: PickListProps) {
  const { options, first, typed } = props;
  const handleKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (moveFocus(event, alongColumn, 'input, ul button') !== null) return;
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement) || typed.trim() === '') return;
    event.preventDefault();
    first()?.onPress();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys are those of the field and the list in it
    <div className={styles.find} onKeyDown={handleKeyDown}>
      <TextField
        label={props.label}
        value={typed}
        onChange={props.onType}
        placeholder={props.placeholder}
        autoFocus={props.autoFocus}
        maxLength={props.maxLength}
      />
      {props.children}
      {options.length === 0 && <p className="soft">{props.none}</p>}
      <ul className={styles.options}>
        {options.map(({ key, words, onPress }, index) => (
          <li key={key}>
            <button type="button" className={styles.option} tabIndex={index === 0 ? 0 : -1} onClick={onPress}>
              {words}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
