import type { ReactNode } from 'react';
import type { ResultLine } from '../../shared-lib/model/reading.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { limitBar } from '../../shared-lib/readings/limit-bar.ts';
import { resultParts, sayLimit, showResult } from '../../shared-lib/report/reading-words.ts';
import type { SheetResult } from '../../shared-lib/sheets/compute.ts';
import { classNames } from '../ui/class-names.ts';
import { UnitText } from '../ui/UnitText.tsx';
import { capital, listWords } from '../ui/words.ts';
import { LimitBarDrawing } from './LimitBarDrawing.tsx';
import styles from './Outcome.module.css';
import { VerdictMark } from './VerdictMark.tsx';

interface ResultRowProps {
  readonly result: SheetResult;
  /** The same as the record keeps it. */
  readonly line: ResultLine;
  readonly before: ResultLine | null;
  /** What another version of the sheet said. */
  readonly otherwise: ResultLine | null;
  readonly system: UnitSystem;
  readonly isEdited: boolean;
  readonly onEdit: () => void;
  readonly editor: ReactNode;
}

const sources = {
  maker: 'the maker’s',
  'machine-shop': 'the machine shop’s',
  'common-practice': 'common practice, not the maker’s',
  none: 'no source named',
} as const;

/** One result: the number, where it stands to its limit, whose limit that is, and how it was come by. */
export function ResultRow({ result, line, before, otherwise, system, isEdited, onEdit, editor }: ResultRowProps) {
  const { limit } = line;
  const shown = line.value === null ? null : resultParts(line.value, line.uncertainty, system);
  const edges = sayLimit(line, system);
  const source =
    limit === null ? '' : [sources[limit.source], limit.page ?? ''].filter((words) => words !== '').join(', ');
  // What the column beside it says already is not said twice.
  const cites =
    limit?.source === 'common-practice' && result.limit?.cites?.includes('; not the maker’s') === false
      ? result.limit.cites
      : undefined;
  const isLacking = result.value === null && result.seen === null;
  const bars =
    result.value === null
      ? []
      : [result.value].flat().map((value) => limitBar(value, result.uncertainty, result.limit));
  return (
    <li>
      <div className={classNames(styles.row, isLacking && styles.lacking)} data-result={result.of}>
        <span className={styles.of}>{capital(result.of)}</span>
        <span className={styles.value}>
          {shown !== null && (
            <span data-value>
              <UnitText value={shown.number} unit={shown.unit} />
            </span>
          )}
          {shown === null && line.value !== null && line.value}
          {shown?.off != null && (
            <span className={styles.off}>
              ±{'\u202f'}
              {shown.off}
            </span>
          )}
          {before?.value != null && (
            <span className={styles.before}>last visit {showResult(before.value, null, system)}</span>
          )}
        </span>
        <span className={styles.bar} data-limit={bars.some((bar) => bar !== null) ? '' : undefined}>
          {bars.map(
            (bar, index) =>
              bar !== null && (
                // biome-ignore lint/suspicious/noArrayIndexKey: one bar for each cylinder, in its order.
                <LimitBarDrawing key={index} bar={bar} verdict={result.verdict} isThin={bars.length > 1} />
              ),
          )}
        </span>
        <span className={styles.limit}>
          <button
            type="button"
            className={styles.change}
            aria-expanded={isEdited}
            aria-label={`Limit of ${result.of}: ${edges === '' ? 'none' : `${edges}, ${source}`}. Change`}
            onClick={onEdit}
          >
            {edges === '' ? <span className={styles.none}>{isLacking ? '' : 'no limit'}</span> : edges}
            <span className={styles.source}>{edges === '' ? 'type the maker’s' : source}</span>
          </button>
        </span>
        <span className={styles.verdict}>
          <VerdictMark verdict={result.verdict} />
        </span>
        <span className={styles.how}>
          {result.needs.length > 0 && <strong>needs {listWords(result.needs)}. </strong>}
          {capital(result.formula)}
          {result.basis !== null && `; ${result.basis}`}.
          {result.crossCheck !== null &&
            ` Cross-check ${crossCheckWords(result, system)}: ${result.crossCheck.formula}.`}
          {result.voidBecause !== null && <strong> Void: {result.voidBecause}</strong>}
          {otherwise !== null && otherwise.value !== line.value && (
            <strong>
              {' '}
              Changed: an earlier version of this sheet said {otherwise.value ?? 'nothing'}, {otherwise.verdict}.
            </strong>
          )}
        </span>
        <span className={styles.from}>
          {result.uncertaintyFrom !== null && shown?.off != null && `± ${result.uncertaintyFrom}. `}
          {cites !== undefined && `Limit: ${cites}.`}
        </span>
      </div>
      {editor}
    </li>
  );
}

const crossCheckWords = ({ crossCheck, unit }: SheetResult, system: UnitSystem): string => {
  const values = [crossCheck?.value ?? []].flat().map((value) => Number(value.toPrecision(6)));
  return showResult(`${values.join('/')}${unit === '' ? '' : ` ${unit}`}`, null, system);
};
