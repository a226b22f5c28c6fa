import type { Evidence, Suspicion } from '../choices/records.ts';
import type { VisitRecord } from '../contract/visits.ts';
import { asPart } from '../report/sentence.ts';
import { sourceById } from './sources.ts';

/** One turn of a suspicion, in words. */
export interface HistoryLine {
  readonly id: string;
  readonly atMs: number | null;
  readonly words: string;
  /** Takes back what was thought before. */
  readonly reverses: boolean;
}

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout'>;

/** Some write the turn into their reason. */
export const turnReason = (because: string): string =>
  because.trim().replace(/^(given up|taken up again)\s*[:;,]\s*/i, '');

const withReason = (words: string, because: string): string =>
  because.trim() === '' ? words : `${words} (${asPart(because)})`;

function lineOfEvidence(evidence: Evidence, before: Evidence | undefined, record: Told): HistoryLine {
  const name = asPart(sourceById(evidence, record)?.title ?? 'what is no longer here');
  const turned = before === undefined ? evidence.bears : `${evidence.bears}, no longer ${before.bears}`;
  return {
    id: evidence.id,
    atMs: evidence.atMs,
    words: withReason(`${turned}: ${name}`, evidence.because),
    reverses: before !== undefined,
  };
}

/** What became of a suspicion, from when it was listed: nothing is left out, so a wrong turn stays an honest one. */
export function historyOf(suspicion: Suspicion, record: Told): readonly HistoryLine[] {
  const { id, createdAtMs, evidence, turns } = suspicion;
  const bore = evidence.map((each, index) => {
    const before = evidence
      .slice(0, index)
      .findLast(({ findingId, readingId }) => findingId === each.findingId && readingId === each.readingId);
    return lineOfEvidence(each, before, record);
  });
  const turned = turns.map(({ id: turnId, turn, findingId, because, atMs }, index): HistoryLine => {
    const number = record.findings.find((finding) => finding.id === findingId)?.number;
    const words = {
      'given-up': withReason('given up', turnReason(because)),
      'taken-up': withReason('taken up again', turnReason(because)),
      found: number === undefined ? 'found to be so' : `found to be so: finding ${number}`,
    }[turn];
    return { id: turnId, atMs, words, reverses: turn !== 'found' || index > 0 };
  });
  const listed = { id, atMs: createdAtMs, words: 'suspected', reverses: false };
  // What has no time keeps its place in its own list.
  return [listed, ...bore, ...turned].toSorted((a, b) => (a.atMs ?? createdAtMs) - (b.atMs ?? createdAtMs));
}
