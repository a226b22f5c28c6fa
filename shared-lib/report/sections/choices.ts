import { sayMoney } from '../../choices/money.ts';
import { costWords, dispositionWords } from '../../choices/words.ts';
import type { ChoiceView } from '../../contract/choices.ts';
import { tierWords } from '../../judgement/tiers.ts';
import { listed } from '../../wording/listed.ts';
import type { ReportContext } from '../context.ts';
import type { ReportRow, RowsSection } from '../model.ts';
import { asPart, asSentence, shortened } from '../sentence.ts';

export type SayFindings = (ids: readonly string[]) => string;

/** `finding 1`, `findings 1 and 3` */
export function findingSpeaker({ record }: ReportContext): SayFindings {
  const numberOf = new Map(record.findings.map(({ id, number }) => [id, number]));
  return (ids) => {
    const numbers = ids.flatMap((id) => numberOf.get(id) ?? []).sort((a, b) => a - b);
    return `${numbers.length === 1 ? 'finding' : 'findings'} ${listed(numbers.map(String))}`;
  };
}

/** `do not operate: 1 and 3; note: 2` */
export function leftByTier({ left }: ChoiceView): string {
  const tiers = [...new Set(left.map(({ tier }) => tier))];
  return tiers
    .map((tier) => {
      const numbers = left.filter((line) => line.tier === tier).map(({ number }) => String(number));
      return `${tierWords(tier).words}: ${listed(numbers)}`;
    })
    .join('; ');
}

const mostDoneFirst = ['fixed', 'partly', 'made-safe', 'unknown'] as const;

function doneWords(choice: ChoiceView, say: SayFindings): string[] {
  const kinds = mostDoneFirst.filter((kind) => choice.dispositions.some(({ is }) => is === kind));
  const done = kinds.map((kind) => {
    const ids = choice.dispositions.filter(({ is }) => is === kind).map(({ findingId }) => findingId);
    return `${dispositionWords[kind]}: ${say(ids)}`;
  });
  const anew = choice.dispositions
    .filter(({ after, why }) => after !== null && why.trim() !== '')
    .map(({ findingId, why }) => asSentence(`${say([findingId])} judged anew: ${asPart(why)}`));
  return [done.length === 0 ? 'Nothing is mended.' : asSentence(done.join('; ')), ...anew];
}

function costParagraphs(choice: ChoiceView, currency: string, taxPercent: string | null): string[] {
  if (choice.costs.length === 0) return [];
  const lines = choice.costs.map(({ kind, words, amount, price }, index) => {
    const times = amount === '1' ? '' : ` (${amount} × ${sayMoney(price, '')})`;
    const named = words.trim() === '' ? costWords[kind] : `${costWords[kind]}, ${asPart(words)}`;
    return `${named}${times}: ${sayMoney(choice.cost.lines[index] ?? '', currency)}`;
  });
  const tax = choice.cost.tax === null ? [] : [`tax ${taxPercent} %: ${sayMoney(choice.cost.tax, currency)}`];
  return [asSentence([...lines, ...tax].join('; ')), `In all ${sayMoney(choice.cost.total, currency)}.`];
}

function rowOf(choice: ChoiceView, context: ReportContext, say: SayFindings): ReportRow {
  const { currency = '', taxPercent = null } = context.record.choices?.money ?? {};
  const left = choice.left.map(({ number, title, tier }) => `${number}, ${asPart(title)} (${tierWords(tier).words})`);
  const note = (label: string, words: string) =>
    words.trim() === '' ? [] : [asSentence(`${label}: ${asPart(words)}`)];
  return {
    label: choice.chosen ? `${choice.name} (taken)` : choice.name,
    paragraphs: [
      ...doneWords(choice, say),
      left.length === 0 ? 'Leaves none of what was found.' : asSentence(`Leaves ${left.join('; ')}`),
      ...(choice.doNotOperateLeft.length === 0
        ? []
        : [asSentence(`The machine is still not to be operated, because of ${say(choice.doNotOperateLeft)}`)]),
      ...choice.willReturn.map(({ findingId, rootsLeft }) =>
        asSentence(`${say([findingId])} will return: root left, ${say(rootsLeft)}`),
      ),
      ...note('On condition', choice.conditions),
      ...note('Work stops and the owner is asked', choice.holdPoints),
      ...costParagraphs(choice, currency, taxPercent),
    ],
  };
}

/** The ways to go on, what each does, leaves and costs, in the order of what stays broken. */
export function choices(context: ReportContext): RowsSection | null {
  const offered = context.record.choices?.choices ?? [];
  if (offered.length === 0) return null;
  const say = findingSpeaker(context);
  return {
    kind: 'rows',
    heading: 'The choices',
    intro: 'What leaves most comes first; none is put forward. Numbers are those of the findings.',
    rows: offered.map((choice) => rowOf(choice, context, say)),
    quoted: [],
  };
}

/** Only what is too long is cut: cutting also loosens the spaces that hold a sum together. */
const kept = (line: string): string => ([...line].length <= 150 ? line : shortened(line, 150));

/** Page one: each choice with what it costs and leaves, in a line. */
export function choicesInShort({ record }: ReportContext): ReportRow[] {
  const { choices: offered = [], money } = record.choices ?? {};
  if (offered.length === 0) return [];
  const lines = offered.map((choice) => {
    const cost = choice.costs.length === 0 ? '' : ` (${sayMoney(choice.cost.total, money?.currency ?? '')})`;
    const left = choice.left.length === 0 ? 'leaves nothing of what was found' : `leaves ${leftByTier(choice)}`;
    return asSentence(`“${shortened(choice.name, 40)}”${cost} ${left}`);
  });
  return [{ label: 'Choices', paragraphs: lines.slice(0, 4).map(kept) }];
}
