import type { ReactNode } from 'react';
import type { ResultLine } from '../../shared-lib/model/reading.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { limitBar } from '../../shared-lib/readings/limit-bar.ts';
import { resultParts, sayLimit, showResult } from '../../shared-lib/report/reading-words.ts';
import type { SheetResult } from '../../shared-lib/sheets/compute.ts';
import { listed } from '../../shared-lib/wording/listed.ts';
import { classNames } from '../ui/class-names.ts';
import { UnitText } from '../ui/UnitText.tsx';
import { capital } from '../ui/words.ts';
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
  readonly isDifference: boolean;
  /** It looks for a thing instead of measuring one. */
  readonly looks: boolean;
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

/** What is said of it once, under all of them. */
const usualOff = 'usual for such a reading; common practice, no source';

/** One result: the number, where it stands to its limit, whose limit that is, and how it was come by. */
export function ResultRow(props: ResultRowProps) {
  const { result, line, before, otherwise, system, isDifference, looks, isEdited, onEdit, editor } = props;
  const { limit } = line;
  const kind = { isComputed: true, isDifference };
  const shown = line.value === null ? null : resultParts(line.value, line.uncertainty, system, kind);
  const edges = sayLimit(line, system, kind);
  const source =
    limit === null ? '' : [sources[limit.source], limit.page ?? ''].filter((words) => words !== '').join(', ');
  // What the column beside it says already is not said twice.
  const cites =
    limit?.source === 'common-practice' && result.limit?.cites?.includes('; not the maker’s') === false
      ? result.limit.cites
      : undefined;
  const off = result.uncertaintyFrom?.replace(usualOff, '').replace(/[,;\s]+$/, '') ?? '';
  const isLacking = result.value === null && result.seen === null;
  const values = result.value === null ? [] : [result.value].flat();
  const bars = values.map((value) => limitBar(value, result.uncertainty, result.limit));
  return (
    <li>
      <div className={classNames(styles.row, isLacking && styles.lacking)} data-result={result.of}>
        <span className={styles.of}>{capital(result.of)}</span>
        <span className={styles.value}>
          {shown !== null && shown.numbers.length === 1 && (
            <span data-value>
              <UnitText value={shown.number} unit={shown.unit} />
            </span>
          )}
          {shown !== null && shown.numbers.length > 1 && (
            <span data-value className={styles.many}>
              {shown.numbers.map((number, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: one for each cylinder, in its order.
                <span key={index}>
                  <span className={styles.which}>{index + 1}</span>
                  <UnitText value={number} unit={shown.unit} />
                </span>
              ))}
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
            <span className={styles.before}>
              last visit {showResult(before.value, null, system, { ...kind, isComputed: false })}
            </span>
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
          {(!looks || isLacking) && (
            <button
              type="button"
              className={styles.change}
              aria-expanded={isEdited}
              aria-label={`Limit of ${result.of}: ${edges === '' ? 'none' : `${edges}, ${source}`}. Change`}
              onClick={onEdit}
            >
              {edges === '' ? <span className={styles.none}>{isLacking ? '' : 'no limit'}</span> : edges}
              <span className={styles.source}>
                {edges === '' ? (looks ? 'type what was seen' : 'type the maker’s') : source}
              </span>
            </button>
          )}
        </span>
        <span>
          <VerdictMark verdict={result.verdict} />
        </span>
        <span className={styles.how}>
          {result.needs.length > 0 && <strong>needs {listed(result.needs)}. </strong>}
          {capital(result.formula)}
          {result.basis !== null && `; ${result.basis}`}.
          {result.crossCheck !== null &&
            ` Cross-check ${crossCheckWords(result, system, isDifference)}: ${result.crossCheck.formula}.`}
          {result.voidBecause !== null && <strong> Void: {result.voidBecause}</strong>}
          {otherwise !== null && otherwise.value !== line.value && (
            <strong>
              {' '}
              Changed: an earlier version of this sheet said {otherwise.value ?? 'nothing'}, {otherwise.verdict}.
            </strong>
          )}
        </span>
        <span className={styles.from}>
          {off !== '' && shown?.off != null && `± ${off}. `}
          {cites !== undefined && `Limit: ${cites}.`}
        </span>
      </div>
      {editor}
    </li>
  );
}

const crossCheckWords = ({ crossCheck, unit }: SheetResult, system: UnitSystem, isDifference: boolean): string => {
  const values = [crossCheck?.value ?? []].flat().map((value) => Number(value.toPrecision(6)));
  const text = `${values.join('/')}${unit === '' ? '' : ` ${unit}`}`;
  return showResult(text, null, system, { isComputed: true, isDifference });
};
