import { openDecisions } from '../../choices/open-decisions.ts';
import { decisionWords } from '../../choices/words.ts';
import { changesSince } from '../../comparison/changes-since.ts';
import type { OldFinding, RepeatFailure } from '../../contract/returning.ts';
import { showValue } from '../../quantities/show-quantity.ts';
import { answerWords } from '../../returning/answer.ts';
import { listed } from '../../wording/listed.ts';
import type { ReportContext } from '../context.ts';
import { sayIsoDay } from '../dates.ts';
import type { SinceSection } from '../model.ts';
import { negativeSentence } from '../negative.ts';
import { asPart, asSentence, shortened } from '../sentence.ts';

function hoursWords(hours: number, { shop }: ReportContext): string {
  return `${showValue(hours, '', 1, shop.units)}\u202fh`;
}

function beforeWords(old: OldFinding, context: ReportContext): string[] {
  const { date, trueHours, words, decided, mended, mendedOnRecord, timesTold, firstDate } = old;
  const at = trueHours === null ? '' : ` at ${hoursWords(trueHours, context)}`;
  const said = decided === null ? '' : decided.completed.trim();
  const until = said === '' ? '' : decided?.decision === 'deferred' ? ` until ${asPart(said)}` : `: ${asPart(said)}`;
  // What was changed or refused may stand in the owner's words already.
  const ownWords = decided?.words.trim() ?? '';
  const own = ownWords === '' || ownWords === said ? '' : ` (“${ownWords}”)`;
  return [
    `${sayIsoDay(date)}${at}.`,
    ...(words.trim() === '' ? [] : [asSentence(shortened(words, 160))]),
    mended
      ? mendedOnRecord === false
        ? 'It was to be mended; no work is on record.'
        : 'It was mended here.'
      : decided === null
        ? 'Nobody decided on it.'
        : asSentence(`it was ${decisionWords[decided.decision]}${until}${own}`),
    ...(timesTold > 1
      ? [
          `First told on ${sayIsoDay(firstDate)}, ${timesTold === 2 ? 'twice' : `${timesTold} times`} before this visit.`,
        ]
      : []),
  ];
}

/** Only what the mechanic answered as failed again is said to the owner; the rest of it is his to look into. */
function failedWords({ answer, takenUpAs }: OldFinding, repeats: readonly RepeatFailure[]): string[] {
  const repeat = repeats.find(({ findingId }) => findingId === takenUpAs);
  if (answer?.answer !== 'repaired-failed' || repeat === undefined || repeat.rootsLeft.length === 0) return [];
  return [asSentence(`a cause was left then: ${listed(repeat.rootsLeft.map(asPart))}`)];
}

/** Decided anew, by itself or with the choice that was taken. */
function isDecided(findingId: string | null, { record }: ReportContext): boolean {
  const { choices } = record;
  if (findingId === null || choices === undefined || choices.decisions.length === 0) return false;
  return openDecisions(choices, [findingId]).length === 0;
}

/** It stands among the findings again, or it was looked for and not found: then nothing is told again. */
function toldNow(findingId: string, { tag }: OldFinding, context: ReportContext): string {
  const finding = context.findingById(findingId);
  if (finding?.state !== 'none-found') return 'told again in this report';
  return `${tag.state === 'not-examined' ? 'looked for now' : 'looked for again'}: ${asPart(negativeSentence(finding))}`;
}

function nowWords(old: OldFinding, context: ReportContext): string[] {
  const { answer, takenUpAs } = old;
  const entry = context.ranked.find(({ finding }) => finding.id === takenUpAs);
  const because = answer === null || answer.because.trim() === '' ? '' : `: ${asPart(answer.because)}`;
  const said =
    answer === null
      ? takenUpAs === null
        ? 'not said what has become of it'
        : toldNow(takenUpAs, old, context)
      : `${answerWords[answer.answer].said}${because}`;
  const carried = context.record.choices?.carriedOver.find(({ findingId }) => findingId === takenUpAs);
  const moved =
    entry === undefined ||
    carried === undefined ||
    carried.rankBefore === null ||
    carried.rankBefore === carried.rankNow
      ? ''
      : `It stood at place ${carried.rankBefore} then and stands at place ${carried.rankNow} now.`;
  const anew =
    carried?.newDecision && !isDecided(takenUpAs, context) ? 'What was told has changed: it needs a new decision.' : '';
  return [
    asSentence(said),
    ...failedWords(old, context.record.before?.repeats ?? []),
    ...(old.due === null || answer?.answer === 'repaired-holds' ? [] : [asSentence(old.due)]),
    moved,
    anew,
  ].filter((each) => each !== '');
}

/** What earlier visits left, and what has become of it. Absent at a first visit. */
export function since(context: ReportContext): SinceSection | null {
  const { before } = context.record;
  if (before === undefined || (before.old.length === 0 && before.readings.length === 0)) return null;
  const at = before.trueHours === null ? '' : ` at ${hoursWords(before.trueHours, context)}`;
  const run =
    before.hoursSince === null
      ? ''
      : ` ${hoursWords(before.hoursSince, context)} ${before.hoursSince === 1 ? 'was' : 'were'} run since.`;
  return {
    kind: 'since',
    heading: 'Since last time',
    intro: `The machine was last here on ${sayIsoDay(before.date)}${at}.${run} A change is told only where it is larger than what the two numbers can be off by together.`,
    columns: ['Finding', 'Then', 'Now'],
    lines: before.old.map((old) => ({
      tag: old.tag,
      title: old.title,
      before: beforeWords(old, context),
      now: nowWords(old, context),
      changes: [...changesSince(old, context.record.comparisons ?? [], context.shop.units)],
    })),
    readingsHeading: 'Readings of the same sheet at the same place',
    readingColumns: ['What', 'Then', 'Now', 'Change'],
    readings: before.readings.map(({ place, what, was, now, change, state, date }) => ({
      what: `${place}, ${what}`,
      before: `${was} (${sayIsoDay(date)})`,
      now,
      change,
      isWorse: state === 'worse',
    })),
  };
}
