import type { Layout } from '../../shared-lib/model/layout.ts';
import type { Reading, ResultLine } from '../../shared-lib/model/reading.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { withUnit } from '../../shared-lib/quantities/show-quantity.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { type ResultKind, resultKindOf } from '../../shared-lib/readings/result-kind.ts';
import { resultParts, showResult } from '../../shared-lib/report/reading-words.ts';
import { sheetOf } from '../../shared-lib/sheets/index.ts';
import { useAppState } from '../app/app-state.ts';
import styles from './ReadingWords.module.css';

const sourceWords = {
  maker: 'the maker’s limit',
  'machine-shop': 'the machine shop’s limit',
  'common-practice': 'common practice',
  none: '',
} as const;

/** Rounded to what it is worth, in the shop's units; what is not a number stays as typed. */
const valueWords = ({ value, uncertainty }: ResultLine, system: UnitSystem, kind: ResultKind): string => {
  const parts = value === null ? null : resultParts(value, uncertainty, system, kind);
  return parts === null ? (value ?? '') : withUnit(parts);
};

/** The edge nearest to the value: the one it was held against. */
const limitWords = ({ limit, value }: ResultLine, system: UnitSystem, kind: ResultKind): string => {
  if (limit === null) return '';
  const number = Number.parseFloat(value ?? '');
  const away = (edge: string) => Math.abs(Number.parseFloat(edge) - number);
  const edges = [limit.min, limit.max, limit.badBelow, limit.badAbove].filter((edge) => edge !== undefined);
  const [nearest] = Number.isNaN(number) ? edges : edges.toSorted((a, b) => away(a) - away(b));
  return [
    nearest === undefined ? undefined : showResult(nearest, null, system, { ...kind, isComputed: false }),
    sourceWords[limit.source],
  ]
    .filter((word) => word !== undefined && word !== '')
    .join(' ');
};

/** A reading in one line: where, what, how much, and what it was held against. */
export function ReadingWords({ reading, layout }: { readonly reading: Reading; readonly layout: Layout }) {
  const { shop } = useAppState();
  const place = speakComponent(reading.at, layout);
  if (reading.notTakenBecause !== null) {
    return (
      <span className={styles.line}>
        {place}: not taken, <span className="soft">{reading.notTakenBecause}</span>
      </span>
    );
  }
  // A filled sheet has more lines than a page of the notebook: those that were judged, else what was read.
  const taken = reading.results.filter(({ value, seen }) => value !== null || seen !== null);
  const judged = taken.filter(({ verdict }) => verdict !== 'recorded only');
  const lines = reading.sheetVersion === 0 ? reading.results : judged.length > 0 ? judged : taken.slice(0, 2);
  if (lines.length === 0) {
    return (
      <span className={styles.line}>
        {place}: {sheetOf(reading.sheet)?.name.toLowerCase() ?? 'a reading'},{' '}
        <span className="soft">begun, nothing computed yet</span>
      </span>
    );
  }
  return (
    <>
      {lines.map((line) => (
        <span key={line.of} className={styles.line}>
          {place}, {line.of}:{' '}
          {line.value !== null && (
            <strong className="num">{valueWords(line, shop.units, resultKindOf(reading, line.of))}</strong>
          )}
          {line.verdict !== 'recorded only' && (
            <> {line.verdict === 'beyond' ? <strong>beyond</strong> : line.verdict}</>
          )}{' '}
          <span className="soft">{limitWords(line, shop.units, resultKindOf(reading, line.of))}</span>
        </span>
      ))}
    </>
  );
}
