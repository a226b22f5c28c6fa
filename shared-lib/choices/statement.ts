import type { ChoiceView } from '../contract/choices.ts';
import type { Standing } from '../contract/standing.ts';
import { tierWords } from '../judgement/tiers.ts';
import type { Finding, FindingAction } from '../model/finding.ts';
import { sayIsoDay } from '../report/dates.ts';
import { asPart, asSentence } from '../report/sentence.ts';
import { listed } from '../wording/listed.ts';
import { sayMoney } from './money.ts';
import type { DecisionKind } from './records.ts';

/** One way the statement can end. `asks` is written on a line after it: `to have it mended, but ...`. */
export interface Ending {
  readonly decision: DecisionKind;
  readonly words: string;
  readonly asks: string | null;
}

/** A statement as it is read back, with its blank. */
export interface Statement {
  readonly shown: string;
  readonly told: readonly string[];
  /** What could come of it: set heavier. Empty where nobody has said. */
  readonly consequence: string;
  readonly advised: string;
  /** Stands before the blank. */
  readonly opens: string;
  /** Of equal weight; none is taken beforehand. */
  readonly endings: readonly Ending[];
  readonly understood: string;
  /** The shop's own words, last; empty where it has none. */
  readonly closing: string;
}

export interface Reader {
  readonly by: string;
  readonly capacity: string;
  readonly date: string;
  /** Numbers of the photos that were shown; unseen ones are not claimed. */
  readonly photos: readonly number[];
  readonly howTold: string;
  /** What the shop adds to every statement. */
  readonly shopWords?: string | undefined;
}

const actions: Readonly<Record<FindingAction, string>> = {
  mend: 'to have it mended',
  replace: 'to have it replaced',
  adjust: 'to have it adjusted',
  clean: 'to have it cleaned',
  monitor: 'to have it watched',
  leave: 'to follow that advice',
  'disable-function': 'to have this function put out of use',
  'remove-from-service': 'to have the machine taken out of use',
};

const advice: Readonly<Record<FindingAction, string>> = {
  mend: 'to have it mended',
  replace: 'to have it replaced',
  adjust: 'to have it adjusted',
  clean: 'to have it cleaned',
  monitor: 'to have it watched',
  leave: 'to leave it for now',
  'disable-function': 'not to use this function',
  'remove-from-service': 'to take the machine out of use',
};

function endings(done: string, left: string): Ending[] {
  return [
    { decision: 'accepted', words: done, asks: null },
    { decision: 'accepted-with-changes', words: `${done}, but`, asks: 'with what change' },
    { decision: 'deferred', words: 'to put it off until', asks: 'until when' },
    { decision: 'declined', words: left, asks: null },
  ];
}

function shownWords({ by, capacity, date, photos, howTold }: Reader): string {
  const who = capacity.trim() === '' ? `I, ${by},` : `I, ${by}, ${asPart(capacity)},`;
  const how = howTold.trim() === '' ? '' : ` ${asPart(howTold)}`;
  const seen =
    photos.length === 0
      ? 'was told of this'
      : `was shown ${photos.length === 1 ? 'photo' : 'photos'} ${listed(photos.map(String))}`;
  return `${who} ${seen}${how} on ${sayIsoDay(date)}.`;
}

/** The statement on one finding. Only what is on record is claimed. Source: the handbook's template, chapter 7.2. */
export function statementOnFinding(finding: Finding, standing: Standing, reader: Reader): Statement {
  const line = standing.lines.find(({ findingId }) => findingId === finding.id);
  // What was looked for and not found has no rank; the owner may still decide about it.
  const title = (line ?? standing.unranked.find(({ findingId }) => findingId === finding.id))?.title ?? finding.words;
  const done = finding.action === null ? 'to have it repaired' : actions[finding.action];
  const outOfUse = finding.doNotOperate ? 'and it was tagged' : '';
  const suspected = finding.state === 'suspected' ? ' This fits what was seen and is not proven.' : '';
  return {
    shown: shownWords(reader),
    told: [
      [
        asSentence(`I was told of finding ${finding.number}, ${asPart(title)}`),
        // Of a finding without a kind the title is these words already.
        title.toLowerCase().includes(finding.words.trim().toLowerCase()) ? '' : asSentence(finding.words),
      ]
        .filter((each) => each !== '')
        .join(' ') + suspected,
    ],
    consequence: finding.ifLeft.trim() === '' ? '' : asSentence(`If it is left: ${asPart(finding.ifLeft)}`),
    advised:
      finding.actionWords.trim() !== ''
        ? asSentence(`I was advised: ${asPart(finding.actionWords)}`)
        : finding.action === null
          ? ''
          : `I was advised ${advice[finding.action]}.`,
    opens: 'I choose',
    endings: endings(done, 'to leave it as it is'),
    understood: [
      'I understand that until it is repaired it stays as described.',
      line?.tier === 0 ? asSentence(`I was told not to operate the machine ${outOfUse}`) : '',
      line?.tier === 2 || finding.doNotRun ? 'I was told not to run the engine.' : '',
    ]
      .filter((each) => each !== '')
      .join(' '),
    closing: asSentence(reader.shopWords ?? ''),
  };
}

/** The statement on one choice: what it does, what it costs, and what it leaves. */
export function statementOnChoice(
  choice: ChoiceView,
  standing: Standing,
  { currency, reader }: { readonly currency: string; readonly reader: Reader },
): Statement {
  const numberOf = new Map(standing.lines.map(({ findingId, number }) => [findingId, number]));
  const findingsOf = (ids: readonly string[]) => {
    const numbers = ids.flatMap((id) => numberOf.get(id) ?? []);
    return `${numbers.length === 1 ? 'finding' : 'findings'} ${listed(numbers.map(String))}`;
  };
  const mended = choice.dispositions.filter(({ is }) => is === 'fixed').map(({ findingId }) => findingId);
  const left = choice.left.map(
    ({ number, title, tier }) => `finding ${number}, ${asPart(title)} (${tierWords(tier).words})`,
  );
  return {
    shown: shownWords(reader),
    told: [
      asSentence(
        `I was told that “${choice.name}” ${mended.length === 0 ? 'mends nothing' : `mends ${findingsOf(mended)}`}`,
      ),
      choice.costs.length === 0 ? '' : `It comes to ${sayMoney(choice.cost.total, currency)}.`,
      left.length === 0 ? 'It leaves none of what was found.' : asSentence(`It leaves ${listed(left)}`),
      ...choice.willReturn.map(({ findingId, rootsLeft }) =>
        asSentence(`What was ${findingsOf([findingId])} will return, because ${findingsOf(rootsLeft)} stays`),
      ),
      choice.conditions.trim() === '' ? '' : asSentence(`On condition: ${asPart(choice.conditions)}`),
      choice.holdPoints.trim() === '' ? '' : asSentence(`Work stops and I am asked: ${asPart(choice.holdPoints)}`),
    ].filter((each) => each !== ''),
    consequence:
      choice.doNotOperateLeft.length === 0
        ? ''
        : asSentence(
            `After it the machine is still not to be operated, because of ${findingsOf(choice.doNotOperateLeft)}`,
          ),
    advised: '',
    opens: 'I choose',
    endings: endings('to have it done so', 'not to have it done'),
    understood: left.length === 0 ? '' : 'I understand that what it leaves stays until it is repaired.',
    closing: asSentence(reader.shopWords ?? ''),
  };
}

/** `to put it off until the spring` */
export function completedWords(statement: Statement, decision: DecisionKind, completed: string): string {
  const ending = statement.endings.find((each) => each.decision === decision);
  if (ending === undefined) return '';
  const said = completed.trim();
  if (ending.asks === null) return ending.words;
  // Put off without a day: then nobody has said until when.
  if (said === '') return decision === 'deferred' ? 'to put it off' : ending.words;
  return `${ending.words} ${said}`;
}

/** The completed statement as one text, as it is kept. */
export function readBack(statement: Statement, decision: DecisionKind, completed: string): string {
  const { shown, told, consequence, advised, opens, understood, closing } = statement;
  const chosen =
    decision === 'refused-by-mechanic'
      ? asSentence(`The mechanic refuses${completed.trim() === '' ? ' what was asked' : `: ${asPart(completed)}`}`)
      : asSentence(`${opens} ${completedWords(statement, decision, completed)}`);
  return [shown, [...told, consequence].filter((each) => each !== '').join(' '), advised, chosen, understood, closing]
    .filter((each) => each !== '')
    .join('\n');
}
