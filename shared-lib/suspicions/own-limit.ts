import type { Bears } from '../choices/records.ts';
import { notFoundSentence } from '../methods/not-found.ts';
import type { Finding } from '../model/finding.ts';
import type { Reading, Verdict } from '../model/reading.ts';
import { readNumber } from '../quantities/read-number.ts';
import { sheetOf } from '../sheets/index.ts';
import type { OpenQuestion } from '../sheets/sheet-kind.ts';
import { worstVerdict } from '../verdict/worst.ts';
import type { EvidenceSource } from './sources.ts';

const passed: ReadonlySet<Verdict> = new Set(['within', 'not found by this test', 'no growth shown']);
const failed: ReadonlySet<Verdict> = new Set(['beyond', 'shown', 'watch']);

/** Whether a field of the reading answers the question: a test that was taken hot does not ask what it would show hot. */
function isAnswered(question: OpenQuestion, { inputs, conditions }: Reading): boolean {
  if (typeof question === 'string') return false;
  const { field, atLeast } = question.unless;
  const typed = conditions[field] ?? inputs[field];
  const read = typed === undefined ? null : readNumber(typed);
  return read !== null && read.value >= atLeast;
}

const words = (question: OpenQuestion): string => (typeof question === 'string' ? question : question.what);

/** What a reading's sheet leaves open, as it came out: clauses, the most telling first; none where nothing is known of it. */
export function leftOpenBy(reading: Reading): {
  readonly result: 'passed' | 'failed' | 'neither';
  readonly open: readonly string[];
} {
  const verdict = worstVerdict(reading.results.map((line) => line.verdict));
  const leaves = sheetOf(reading.sheet)?.leavesOpen;
  const result = passed.has(verdict) ? 'passed' : failed.has(verdict) ? 'failed' : 'neither';
  if (leaves === undefined || result === 'neither') return { result, open: [] };
  return { result, open: leaves[result].filter((question) => !isAnswered(question, reading)).map(words) };
}

function limitOfReading(reading: Reading, bears: Bears): string {
  const verdict = worstVerdict(reading.results.map((line) => line.verdict));
  if (verdict === 'void') return 'the conditions of the test were not met';
  if (verdict === 'too close to tell') return 'the reading lies closer to its limit than it can be off by';
  if (verdict === 'recorded only') return bears === 'cannot tell' ? 'there was no limit to hold it against' : '';
  const { result, open } = leftOpenBy(reading);
  const [first] = open;
  if (first === undefined || result === 'neither') return '';
  // A good result is held against a suspicion, a bad one for it: only there its limit says something.
  if (result === 'passed') return bears === 'for' ? '' : `does not rule out ${first}`;
  return bears === 'against' ? '' : `does not say ${first}`;
}

function limitOfFinding(finding: Finding, bears: Bears): string {
  if (finding.kind === 'observation') return 'seen or told, not measured: a clue, no proof';
  if (finding.state === 'suspected') return 'is itself only suspected';
  if (finding.state !== 'none-found' || bears === 'for') return '';
  const said = notFoundSentence(finding.defect ?? '', finding.methods, finding.locations[0] ?? null);
  return said.charAt(0).toLowerCase() + said.slice(1);
}

/**
 * Why a reading or finding settles no more than it does, in the own words of its sheet or method: what stands as the reason
 * where the mechanic gives none. Empty where nothing limits it.
 *
 * Source: the handbook's chapters 4.1 and 5; common practice, no source.
 */
export function ownLimit(source: EvidenceSource, bears: Bears): string {
  return source.kind === 'reading' ? limitOfReading(source.reading, bears) : limitOfFinding(source.finding, bears);
}
