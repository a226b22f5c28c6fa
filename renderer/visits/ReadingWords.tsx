import type { Layout } from '../../shared-lib/model/layout.ts';
import type { Reading, ResultLine } from '../../shared-lib/model/reading.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';

const sourceWords = {
  maker: 'the maker’s limit',
  'machine-shop': 'the machine shop’s limit',
  'common-practice': 'common practice',
  none: '',
} as const;

/** The edge that the value was held against. */
const limitWords = ({ limit, verdict }: ResultLine): string => {
  if (limit === null) return '';
  const edge =
    verdict === 'beyond' ? (limit.badAbove ?? limit.badBelow ?? limit.max ?? limit.min) : (limit.max ?? limit.min);
  return [edge, sourceWords[limit.source]].filter((word) => word !== undefined && word !== '').join(' ');
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
