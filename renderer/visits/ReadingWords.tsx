import type { Layout } from '../../shared-lib/model/layout.ts';
import type { Reading, ResultLine } from '../../shared-lib/model/reading.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';

const sourceWords = {
  maker: 'the maker’s limit',
  'machine-shop': 'the machine shop’s limit',
  'common-practice': 'common practice',
  none: '',
} as const;

/** The edge nearest to the value: the one it was held against. */
const limitWords = ({ limit, value }: ResultLine): string => {
  if (limit === null) return '';
  const number = Number.parseFloat(value ?? '');
  const away = (edge: string) => Math.abs(Number.parseFloat(edge) - number);
  const edges = [limit.min, limit.max, limit.badBelow, limit.badAbove].filter((edge) => edge !== undefined);
  const [nearest] = Number.isNaN(number) ? edges : edges.toSorted((a, b) => away(a) - away(b));
  return [nearest, sourceWords[limit.source]].filter((word) => word !== undefined && word !== '').join(' ');
};

/** A reading in one line: where, what, how much, and what it was held against. */
export function ReadingWords({ reading, layout }: { readonly reading: Reading; readonly layout: Layout }) {
  const place = speakComponent(reading.at, layout);
  if (reading.notTakenBecause !== null) {
    return (
      <p>
        {place}: not taken, <span className="soft">{reading.notTakenBecause}</span>
      </p>
    );
  }
  return (
    <>
      {reading.results.map((line) => (
        <p key={line.of}>
          {place}, {line.of}: {line.value !== null && <strong className="num">{line.value}</strong>}
          {line.verdict !== 'recorded only' && (
            <> {line.verdict === 'beyond' ? <strong>beyond</strong> : line.verdict}</>
          )}{' '}
          <span className="soft">{limitWords(line)}</span>
        </p>
      ))}
    </>
  );
}
