import { type KeyboardEvent, useRef } from 'react';
import {
  countOfKind,
  type LineKind,
  lineKinds,
  type Narrowing,
  wholeTable,
} from '../../shared-lib/suspicions/narrow.ts';
import type { SuspicionTable } from '../../shared-lib/suspicions/table.ts';
import { useCommand } from '../app/command-keys.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { SearchField } from '../ui/SearchField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import styles from './TableFilter.module.css';

interface TableFilterProps {
  readonly table: SuspicionTable;
  readonly narrowing: Narrowing;
  /** How many lines stand after it. */
  readonly shown: number;
  readonly pickedId: string | null;
  readonly onNarrow: (narrowing: Narrowing) => void;
  /** Down from the search: into the table. */
  readonly onEnterTable: () => void;
}

const kindWords: Readonly<Record<LineKind, string>> = {
  all: 'all',
  'not-held': 'not held against any yet',
  turned: 'turned round',
  reading: 'read',
  finding: 'found',
  observation: 'seen or told',
};

/** Which lines of a long table stand: by what they are, by words, or what bears on the suspicion that is picked. */
export function TableFilter({ table, narrowing, shown, pickedId, onNarrow, onEnterTable }: TableFilterProps) {
  const search = useRef<HTMLInputElement>(null);
  useCommand('visit.find', () => search.current?.focus());
  const picked = table.columns.find(({ suspicion }) => suspicion.id === pickedId);
  const all = table.sources.length;
  const kinds = lineKinds
    .map((value) => ({ value, count: countOfKind(table, value) }))
    .filter(({ value, count }) => value === narrowing.kind || (count > 0 && (value === 'all' || count < all)));
  const handleKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'ArrowDown' && event.key !== 'Enter') return;
    event.preventDefault();
    onEnterTable();
  };
  return (
    <search className={styles.filter} aria-label="Lines of the table">
      <Choice
        label="Lines that stand"
        hideLabel
        options={kinds.map(({ value, count }) => ({ value, words: `${kindWords[value]} ${count}` }))}
        value={narrowing.kind}
        onChoose={(kind) => onNarrow({ ...narrowing, kind })}
      />
      <div className={styles.row}>
        <SearchField
          ref={search}
          label="Find a line"
          value={narrowing.words}
          onChange={(words) => onNarrow({ ...narrowing, words })}
          onKeyDown={handleKeyDown}
        />
        {picked !== undefined && (
          <Toggle
            label={`only what bears on “${picked.suspicion.what}”`}
            on={narrowing.bearsOn !== null}
            onChange={(on) => onNarrow({ ...narrowing, bearsOn: on ? picked.suspicion.id : null })}
          />
        )}
        <p className={styles.count} role="status">
          {shown === all ? `${all} lines` : `${shown} of ${all} lines`}
        </p>
        {shown < all && (
          <Button look="link" onPress={() => onNarrow(wholeTable)}>
            Show all
          </Button>
        )}
      </div>
    </search>
  );
}
