import { useState } from 'react';
import type { Bears, Suspicion } from '../../shared-lib/choices/records.ts';
import type { EvidenceSource } from '../../shared-lib/suspicions/sources.ts';
import type { EvidenceCell } from '../../shared-lib/suspicions/table.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { TextField } from '../ui/TextField.tsx';
import styles from './BearsCell.module.css';
import { bearsInOrder } from './bears-words.ts';

interface BearsCellProps {
  readonly suspicion: Suspicion;
  readonly source: EvidenceSource;
  readonly cell: EvidenceCell | undefined;
  /** The one word of the table that the tab key stops at. */
  readonly current: string;
  readonly onStop: (stop: string) => void;
}

/** What one thing says of one suspicion: three words in their places, one of them said. One press says it. */
export function BearsCell({ suspicion, source, cell, current, onStop }: BearsCellProps) {
  const bear = useChange('suspicion.bear');
  const [isSaying, setSaying] = useState(false);
  const by = source.kind === 'reading' ? { readingId: source.id } : { findingId: source.id };
  const say = (bears: Bears, because = '') => bear.run({ id: suspicion.id, ...by, bears, because });
  const reason = cell === undefined ? '' : cell.because || cell.limit;
  return (
    <div>
      {/* biome-ignore lint/a11y/useSemanticElements: a group of buttons in a table's cell */}
      <div className={styles.words} role="group" aria-label={`${source.title}: “${suspicion.what}”`}>
        {bearsInOrder.map((bears) => {
          const stop = `${source.id} ${suspicion.id} ${bears}`;
          const isSaid = cell?.bears === bears;
          return (
            <button
              key={bears}
              type="button"
              className={styles.word}
              data-stop={stop}
              data-bears={bears}
              tabIndex={stop === current ? 0 : -1}
              aria-pressed={isSaid}
              aria-label={`${bears}: “${suspicion.what}”, by ${source.title}`}
              onFocus={() => onStop(stop)}
              onClick={() => (isSaid ? setSaying(!isSaying) : say(bears))}
            >
              <span className={styles.plate}>{bears}</span>
            </button>
          );
        })}
      </div>
      {cell !== undefined && isSaying && (
        <TextField
          label="Why"
          value={reason}
          autoFocus
          maxLength={400}
          lines="many"
          onCommit={(because) => {
            say(cell.bears, because.trim() === cell.limit ? '' : because.trim());
            setSaying(false);
          }}
        />
      )}
      {cell !== undefined && !isSaying && (
        <button type="button" className={styles.reason} onClick={() => setSaying(true)}>
          {reason === '' && <span className={styles.why}>why?</span>}
          {cell.because !== '' && <span className={styles.own}>{cell.because}</span>}
          {cell.limit !== '' && <span className={styles.limit}>{cell.limit}</span>}
          {cell.earlier.length > 0 && (
            <span className={styles.before}>before: {cell.earlier.map(({ bears }) => bears).join(', then ')}</span>
          )}
        </button>
      )}
      {bear.error !== null && <span role="alert">{wordsOf(bear.error).happened}</span>}
    </div>
  );
}
