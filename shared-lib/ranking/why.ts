import { damageClassWords } from '../judgement/damage-class.ts';
import { urgencyWords } from '../judgement/urgency.ts';
import type { Probability, Severity } from '../model/finding.ts';
import { listed } from '../wording/listed.ts';
import { namedConditionOf } from './named-conditions/index.ts';
import type { Ranked } from './rank.ts';
import type { RankingUse } from './rankable.ts';

export interface WhyContext {
  readonly use: RankingUse & { readonly exposureHours: number };
  /** Tag number of a finding of this standing. */
  readonly numberOf: (id: string) => number | null;
  readonly notExaminedBecause: string | null;
  /** It is called confirmed, and what is missing makes it count as suspected. */
  readonly heldAsSuspected: boolean;
  /** Tag numbers of the confirmed findings it leads to. */
  readonly confirmedConsequences: readonly number[];
}

const notJudged = 'not judged yet';

const harm: Readonly<Record<Severity, string>> = {
  1: 'could kill or disable somebody',
  2: 'could maim somebody',
  3: 'could cost somebody a day of work',
  4: 'could hurt somebody a little',
};

const chance: Readonly<Record<Probability, string>> = {
  A: 'often',
  B: 'several times',
  C: 'likely sometime',
  D: 'unlikely but possible',
  E: 'hardly to be expected',
  F: 'no longer',
};

/** A reason inside brackets: its first sentence, without the capital and the stop of a sentence of its own. */
function inPassing(reason: string): string {
  const first = /^.*?[.!?](?=\s|$)/s.exec(reason.trim())?.[0] ?? reason.trim();
  return first.replace(/[.!?]+$/, '').replace(/^\p{Lu}(?=\p{Ll}|\s)/u, (letter) => letter.toLowerCase());
}

function harmWords(item: Ranked, hours: number): string {
  const { safety } = item.finding;
  if (safety === null || safety === 'none') return 'no risk to people named';
  return `${harm[safety.severity]}: ${chance[safety.probability]} in ${hours} hours of use`;
}

function wordsOfUse({ road, slope, peopleNear }: RankingUse): string {
  const words = [road ? 'on the road' : '', slope ? 'on slopes' : '', peopleNear ? 'near people' : ''];
  return words.filter((word) => word !== '').join(', ');
}

function soonWords(item: Ranked): string {
  const { urgency, damageClass } = item.finding;
  if (urgency !== null && urgency <= 3) return `due ${urgencyWords(urgency).within}`;
  if (urgency === null) return notJudged;
  return damageClass === null ? notJudged : `waiting can cost ${damageClassWords(damageClass).sense}`;
}

function groundWords(item: Ranked, context: WhyContext): string {
  const { finding } = item;
  switch (item.ground) {
    case 'must-be-examined': {
      const reason = inPassing(context.notExaminedBecause ?? '');
      return `must be examined before release: nobody has looked${reason === '' ? '' : ` (${reason})`}`;
    }
    case 'named':
      return namedConditionOf(finding.named)?.words ?? 'a do-not-operate condition';
    case 'safety':
      return harmWords(item, context.use.exposureHours);
    case 'critical-in-use':
      return `${harmWords(item, context.use.exposureHours)}; it works ${wordsOfUse(context.use)}`;
    case 'running-makes-it-worse':
      return `running makes it worse, ${soonWords(item)}`;
    case 'time-or-cost':
      return soonWords(item);
    case 'not-judged':
      return `${notJudged}, so it cannot stand as a note`;
    case 'nothing-more':
      return 'nothing urgent seen';
  }
}

function doubtWords(item: Ranked, context: WhyContext): string {
  if (context.heldAsSuspected) return 'counts as suspected until it is shown';
  const { state } = item.finding;
  if (state === 'not-examined' && item.ground !== 'must-be-examined') return 'not examined';
  if (state !== 'suspected') return '';
  if (item.loweredByDoubt) return 'one step lower because it is only suspected';
  if (context.confirmedConsequences.length > 0) {
    const numbers = context.confirmedConsequences;
    return `suspected, and it leads to ${listed(numbers)}, which ${numbers.length === 1 ? 'is' : 'are'} certain`;
  }
  return item.tier <= 1 ? 'suspected, and so taken for true until proven otherwise' : 'suspected';
}

/** What puts it before its neighbour; nothing where the reason given so far already says it. */
function placeWords(item: Ranked, context: WhyContext): string {
  if (item.before === null) return '';
  const next = context.numberOf(item.before.id);
  if (next === null) return '';
  switch (item.before.because) {
    case 'leads to it':
      return context.confirmedConsequences.includes(next) && item.finding.state === 'suspected'
        ? ''
        : `before ${next}, which it leads to`;
    case 'sooner':
      return item.urgencyFrom === null
        ? `sooner than ${next}`
        : `leads to ${context.numberOf(item.urgencyFrom)}, so before ${next}`;
    case 'dearer':
      return `dearer than ${next} if it is left`;
    case 'graver':
    case 'surer':
      return '';
  }
}

/** Why a finding stands where it does, as one sentence a mechanic can read out. */
export function why(item: Ranked, context: WhyContext): string {
  const { finding } = item;
  const place = placeWords(item, context);
  const ground = [groundWords(item, context), place].filter((part) => part !== '').join(', ');
  const parts = [ground, doubtWords(item, context)];
  const named = namedConditionOf(finding.named);
  if (named !== null && finding.namedDeclinedBecause !== null) {
    parts.push(`${named.words}, yet not followed: ${finding.namedDeclinedBecause}`);
  }
  if (finding.safety === null && !ground.startsWith(notJudged))
    parts.push('whether it can hurt somebody is not judged yet');
  const said = parts.filter((part) => part !== '').join('; ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}${said.endsWith('.') ? '' : '.'}`;
}
