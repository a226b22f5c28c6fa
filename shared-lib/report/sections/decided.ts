import { type OpenDecision, openDecisions } from '../../choices/open-decisions.ts';
import { decisionWords } from '../../choices/words.ts';
import type { DecisionView } from '../../contract/choices.ts';
import { listed } from '../../wording/listed.ts';
import type { ReportContext } from '../context.ts';
import { sayMoment } from '../dates.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { asPart, asSentence, shortened } from '../sentence.ts';
import { findingSpeaker } from './choices.ts';

/** The last word on each finding and each choice; an earlier one was taken back by it. */
function lastWords(decisions: readonly DecisionView[]): DecisionView[] {
  const subject = ({ findingId, choiceId }: DecisionView) => findingId ?? choiceId;
  return decisions.filter(
    (decision, index) => !decisions.slice(index + 1).some((later) => subject(later) === subject(decision)),
  );
}

const decidedAs = ({ decision, completed }: DecisionView): string => {
  const said = completed.trim();
  if (said === '') return decisionWords[decision];
  return decision === 'deferred'
    ? `${decisionWords[decision]} until ${asPart(said)}`
    : `${decisionWords[decision]}: ${asPart(said)}`;
};

function subjectOf(decision: DecisionView, context: ReportContext): string {
  if (decision.findingId !== null) return findingSpeaker(context)([decision.findingId]);
  const choice = context.record.choices?.choices.find(({ id }) => id === decision.choiceId);
  return choice === undefined ? 'a choice' : `“${choice.name}”`;
}

function signedWords({ signature, unsignedBecause, by }: DecisionView): string {
  if (signature !== null) return `Signed by ${by}.`;
  return unsignedBecause.trim() === '' ? 'Not signed.' : asSentence(`Not signed: ${asPart(unsignedBecause)}`);
}

/** The box it was signed in, as wide to its height as on the screen. */
const signatureBox = { widthMm: 60, heightMm: 18 } as const;

function signatureOf({ signature, by }: DecisionView): Pick<ReportRow, 'signature'> {
  if (signature === null) return {};
  const { widthMm, heightMm } = signatureBox;
  const mm = (share: number, whole: number): number => Math.round(share * whole * 100) / 100;
  const strokes = signature.map((stroke) => stroke.map(([x, y]) => [mm(x, widthMm), mm(y, heightMm)] as const));
  return { signature: { ...signatureBox, strokes, alternative: `Signature of ${by}` } };
}

function rowOf(decision: DecisionView, context: ReportContext): ReportRow {
  const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
  const readBy = context.personName(decision.personId);
  const when = sayMoment({ atMs: decision.decidedAtMs, zoneOffsetMin: decision.zoneOffsetMin });
  return {
    label: capital(subjectOf(decision, context)),
    paragraphs: [
      asSentence(decidedAs(decision)),
      ...decision.statement.split('\n').map(asSentence),
      ...(decision.words.trim() === '' ? [] : [`In their own words: “${decision.words.trim()}”`]),
      `${signedWords(decision)} Read back${readBy === null ? '' : ` by ${readBy}`} on ${when}.`,
      ...(decision.covers ? [] : ['What was told then has changed since: this decision does not cover it.']),
    ],
    ...signatureOf(decision),
  };
}

/** What no decision covers, and why the report goes out all the same. */
function openWords(context: ReportContext): string {
  const { record, ranked, issue } = context;
  if (record.choices === undefined) return '';
  const open = openDecisions(
    record.choices,
    ranked.map(({ finding }) => finding.id),
  );
  const say = findingSpeaker(context);
  const those = (why: OpenDecision['why']) => open.filter((each) => each.why === why).map(({ findingId }) => findingId);
  const because = issue?.undecidedBecause ?? '';
  return [
    ...(those('undecided').length === 0 ? [] : [`Nobody has decided on ${say(those('undecided'))}.`]),
    ...(those('changed').length === 0 ? [] : [`What was decided no longer covers ${say(those('changed'))}.`]),
    ...(open.length === 0 || because === '' ? [] : [asSentence(`issued all the same: ${asPart(because)}`)]),
  ].join(' ');
}

/** Each statement as it was read back, and what nobody has decided yet. */
export function decided(context: ReportContext): RowsSection | null {
  const { decisions = [] } = context.record.choices ?? {};
  if (decisions.length === 0) return null;
  return {
    kind: 'rows',
    heading: 'What was decided',
    intro: openWords(context),
    rows: lastWords(decisions).map((decision) => rowOf(decision, context)),
    quoted: [],
  };
}

/** Page one: the choice that was taken, then what was decided of single findings. */
export function decidedInShort(context: ReportContext): ReportRow[] {
  const { decisions = [], choices = [] } = context.record.choices ?? {};
  if (decisions.length === 0)
    return choices.length === 0 ? [] : [{ label: 'You decided', paragraphs: ['Nothing yet.'] }];
  const last = lastWords(decisions);
  const ofChoices = last
    .filter(({ choiceId }) => choiceId !== null)
    .map((decision) => `${subjectOf(decision, context)} ${decidedAs(decision)}`);
  const numberOf = new Map(context.record.findings.map(({ id, number }) => [id, number]));
  const ofFindings = Map.groupBy(
    last.filter(({ findingId }) => findingId !== null),
    decidedAs,
  );
  const single = [...ofFindings].map(([words, group]) => {
    const numbers = group.flatMap(({ findingId }) => numberOf.get(findingId ?? '') ?? []);
    const which = listed(numbers.sort((a, b) => a - b).map(String));
    const [{ decision, completed } = { decision: 'accepted' as const, completed: '' }] = group;
    // What was changed or refused is a sentence of its own: the numbers go before it.
    return decision === 'deferred' || completed.trim() === ''
      ? `${words}: ${which}`
      : `${decisionWords[decision]}: ${which} (${asPart(completed)})`;
  });
  const all = [...ofChoices, ...single].map(asSentence).join(' ');
  const open = openWords(context);
  return [{ label: 'You decided', paragraphs: [shortened(all, 300), ...(open === '' ? [] : [shortened(open, 200)])] }];
}
