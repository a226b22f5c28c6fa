import { type KeyboardEvent, type RefObject, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import type { EvidenceSource } from '../../shared-lib/suspicions/sources.ts';
import type { SuspicionColumn, SuspicionTable } from '../../shared-lib/suspicions/table.ts';
import { worstVerdict } from '../../shared-lib/verdict/worst.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { classNames } from '../ui/class-names.ts';
import painted from '../ui/painted.module.css';
import { BearsCell } from './BearsCell.tsx';
import { countWords } from './bears-words.ts';
import { Moment } from './Moment.tsx';
import styles from './SuspicionTableView.module.css';

interface SuspicionTableViewProps {
  readonly record: VisitRecord;
  readonly table: SuspicionTable;
  /** The lines that stand: all of them, or those that were asked for. */
  readonly sources: readonly EvidenceSource[];
  readonly pickedId: string | null;
  readonly onPick: (id: string | null) => void;
  readonly body: RefObject<HTMLTableSectionElement | null>;
}

const isGridKey = (key: string): boolean => ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'].includes(key);

/**
 * The table of suspicions against evidence. One stop for the tab key: arrows go from word to word, and along the rows; the
 * words themselves are buttons.
 */
export function SuspicionTableView({ record, table, sources, pickedId, onPick, body }: SuspicionTableViewProps) {
  const [stop, setStop] = useState('');
  const { columns } = table;
  const first = `${sources[0]?.id} ${columns[0]?.suspicion.id} against`;
  // A line that no longer stands holds no stop.
  const current = sources.some(({ id }) => stop.startsWith(`${id} `)) ? stop : first;

  const move = (event: KeyboardEvent) => {
    const here =
      event.target instanceof HTMLElement ? event.target.closest<HTMLButtonElement>('button[data-stop]') : null;
    if (here === null || !isGridKey(event.key)) return;
    event.preventDefault();
    const rows = [...(body.current?.rows ?? [])].map((row) => [
      ...row.querySelectorAll<HTMLButtonElement>('button[data-stop]'),
    ]);
    const row = rows.findIndex((stops) => stops.some((each) => each === here));
    const column = rows[row]?.indexOf(here) ?? 0;
    const step = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }[event.key] ?? [0, 0];
    rows[row + (step[0] ?? 0)]?.[column + (step[1] ?? 0)]?.focus();
  };

  return (
    <>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col" className={styles.evidence}>
              Read, found, seen
            </th>
            {columns.map((column) => (
              <th key={column.suspicion.id} scope="col" className={styles.suspicion}>
                <Head record={record} column={column} isPicked={column.suspicion.id === pickedId} onPick={onPick} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body} onKeyDown={move}>
          {sources.map((source) => (
            <tr key={source.id}>
              <th scope="row" className={styles.evidence}>
                <SourceWords source={source} record={record} />
              </th>
              {columns.map(({ suspicion, cells, state }) => (
                <td key={suspicion.id} className={styles.cell} data-still={state === 'given-up' || undefined}>
                  <BearsCell
                    suspicion={suspicion}
                    source={source}
                    cell={cells.get(source.id)}
                    current={current}
                    onStop={setStop}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {table.sources.length > 0 && sources.length === 0 && (
        <p className={styles.none}>No line of the table is such. What was hidden is still there: show all.</p>
      )}
      {table.sources.length === 0 && (
        <p className={styles.none}>Nothing was read, found or seen yet. What is, becomes a line here by itself.</p>
      )}
    </>
  );
}

interface HeadProps {
  readonly record: VisitRecord;
  readonly column: SuspicionColumn;
  readonly isPicked: boolean;
  readonly onPick: (id: string | null) => void;
}

function Head({ record, column, isPicked, onPick }: HeadProps) {
  const { suspicion, state, counts, foundBy } = column;
  const number = record.findings.find(({ id }) => id === foundBy)?.number;
  return (
    <button
      type="button"
      className={classNames(styles.head, isPicked && painted.painted)}
      aria-pressed={isPicked}
      onClick={() => onPick(isPicked ? null : suspicion.id)}
    >
      <span className={classNames(styles.what, state === 'given-up' && styles.struck)}>{suspicion.what}</span>
      {suspicion.at !== null && (
        <span className={styles.small}>{speakComponent(suspicion.at, record.layout.layout)}</span>
      )}
      <span className={styles.small}>
        {state === 'given-up' && 'given up; '}
        {state === 'found' && `found: finding ${number ?? '?'}; `}
        {countWords(counts) || 'nothing held against it yet'}
      </span>
    </button>
  );
}

function SourceWords({ source, record }: { readonly source: EvidenceSource; readonly record: VisitRecord }) {
  const time = <Moment className={styles.time} atMs={source.atMs} day={record.visit.date} />;
  if (source.kind === 'reading') {
    const { id, visitId, sheet } = source.reading;
    return (
      <button
        type="button"
        className={styles.source}
        onClick={() => go({ name: 'visit', visitId, page: 'sheets', sheet, readingId: id })}
      >
        {time}
        <span>
          {source.title}
          <span className={styles.said}>{worstVerdict(source.reading.results.map((line) => line.verdict))}</span>
        </span>
      </button>
    );
  }
  const { finding } = source;
  const tier = record.standing.lines.find(({ findingId }) => findingId === finding.id)?.tier ?? null;
  return (
    <button
      type="button"
      className={styles.source}
      onClick={() => go({ name: 'visit', visitId: finding.visitId, page: 'page', findingId: finding.id })}
    >
      {time}
      <span className={styles.found}>
        {source.kind === 'finding' && (
          <TagPlate
            number={finding.number}
            tier={tier ?? 4}
            state={finding.state}
            label={`Finding ${finding.number}:`}
          />
        )}
        <span>
          {source.title}
          {source.kind === 'observation' && <span className={styles.said}>seen or told</span>}
        </span>
      </span>
    </button>
  );
}
