import { AppError } from '../contract/errors.ts';
import type { Use } from '../model/visit.ts';
import { classesOfPlace } from '../parts/classes-of-place.ts';
import type { ComponentClass } from '../parts/component.ts';
import { isJudged } from '../ranking/rankable.ts';
import type { RankedFinding, ReportContext } from './context.ts';
import type { ReportTag } from './model.ts';
import { asPart, asSentence, counted, listed, shortened } from './sentence.ts';

/** What may not be done while a part of such a class is not to be trusted, most specific first. */
const useOfClass: readonly [classes: readonly ComponentClass[], limit: string][] = [
  [
    ['lift-structure', 'load-holding', 'hydraulic-cylinder', 'lock-valve', 'chain', 'fork', 'hook'],
    'raise or hold nothing with it',
  ],
  [['steering', 'brakes', 'wheel', 'rim', 'articulation'], 'do not drive it'],
  [['fuel-under-pressure', 'fuel-high-pressure', 'fuel', 'gas-fuel'], 'do not start it'],
  [['interlock', 'shut-down', 'stop-control', 'guard', 'driveline'], 'do not start it with anybody near'],
];

function classesOf(location: string | undefined, context: ReportContext): ReadonlySet<ComponentClass> {
  if (location === undefined) return new Set();
  try {
    return classesOfPlace(location, context.layout);
  } catch (error) {
    if (error instanceof AppError) return new Set();
    throw error;
  }
}

/** Hoses of a load-holding line carry no class of their own; the mechanic's facts say it. */
function holdsALoad({ finding }: RankedFinding): boolean {
  return finding.facts.includes('load-holding-line') || finding.facts.includes('under-load');
}

function limitsOf(entries: readonly RankedFinding[], context: ReportContext): string[] {
  const limits = entries.flatMap((entry) => {
    const classes = classesOf(entry.finding.locations[0], context);
    const [lifting] = useOfClass[0] ? [useOfClass[0][1]] : [];
    if (holdsALoad(entry) && lifting) return [lifting];
    const found = useOfClass.find(([of]) => of.some((each) => classes.has(each)));
    return found ? [found[1]] : [];
  });
  return [...new Set(limits)];
}

function whereItWorks(use: Use): string {
  const places = [
    ...(use.road ? ['on the road'] : []),
    ...(use.slope ? ['on a slope'] : []),
    ...(use.peopleNear ? ['near people'] : []),
  ];
  return places.length === 0 ? '' : ` ${listed(places, 'or')}`;
}

/** Doubt stands beside the words; a title that says 'not examined' says it already. */
const doubts: Readonly<Record<RankedFinding['line']['state'], string>> = {
  confirmed: '',
  suspected: ' (not proven)',
  'not-examined': '',
  'none-found': '',
};

/** The reasons, in the words of the list, with their doubt. */
function reasons(entries: readonly RankedFinding[]): string {
  const said = entries.map(({ line }) => asSentence(`${shortened(line.title, 76)}${doubts[line.state]}`));
  return said.join(' ');
}

/** How many findings the statement names; page one shows as many with a photo. */
const mostNamed = 3;

export interface StatementOnUse {
  readonly words: string;
  readonly tags: readonly ReportTag[];
}

/** What nobody has looked at, and what nobody has judged: both may still hold a limit. */
function stillOpen({ ranked, record }: ReportContext): string {
  const unseen = record.standing.coverage.notExamined;
  const unjudged = ranked.filter(({ finding }) => !isJudged(finding)).length;
  return [
    unjudged === 0 ? '' : asSentence(`${counted(unjudged, 'finding')} not judged yet`),
    unseen === 0
      ? ''
      : asSentence(
          `${counted(unseen, 'agreed item')} ${unseen === 1 ? 'was' : 'were'} not looked at: nothing is known of ${unseen === 1 ? 'it' : 'them'}`,
        ),
  ]
    .filter((each) => each !== '')
    .join(' ');
}

function withoutLimit(context: ReportContext): StatementOnUse {
  const open = stillOpen(context);
  const worst = context.ranked.filter(({ line }) => line.tier === context.ranked[0]?.line.tier).slice(0, 2);
  if (worst.length === 0) {
    const examined = context.record.standing.coverage.examined;
    const none = asSentence(`no finding is on record, from ${counted(examined, 'agreed item')} looked at`);
    return { words: [none, open].filter((each) => each !== '').join(' '), tags: [] };
  }
  const when = worst[0]?.line.tier === 3 ? 'To be seen to before it fails or costs more' : 'To keep an eye on';
  const limit =
    open === ''
      ? 'No limit on use follows from what was found.'
      : 'No limit on use follows from what was found so far.';
  const said = [limit, `${when}: ${asPart(reasons(worst))}.`, open];
  return { words: said.filter((each) => each !== '').join(' '), tags: worst.map(({ tag }) => tag) };
}

/**
 * May it be used? A sentence composed from the worst findings and the limit they set: never a lamp, never a fixed word, and
 * never that a machine is fit.
 */
export function statementOnUse(context: ReportContext): StatementOnUse {
  const worstTier = context.ranked[0]?.line.tier;
  if (worstTier === undefined || worstTier > 2) return withoutLimit(context);
  const named = context.ranked.filter(({ line }) => line.tier === worstTier).slice(0, mostNamed);
  const more = context.ranked.filter(({ line }) => line.tier === worstTier).length - named.length;
  const tail = more > 0 ? ` ${asSentence(`and ${more} more of the same weight`)}` : '';
  const tags = named.map(({ tag }) => tag);
  const because = `${reasons(named)}${tail}`;
  if (worstTier === 0) {
    const limits = limitsOf(named, context);
    const limit = limits.length === 0 ? '' : `: ${listed(limits)}`;
    return { words: `Do not operate this machine${limit}. ${because}`, tags };
  }
  if (worstTier === 1) {
    const onlyUnseen = named.every(({ line }) => line.state === 'not-examined');
    const what = onlyUnseen ? 'this is examined' : 'this is mended or examined';
    return {
      words: `Not to be put to work${whereItWorks(context.record.visit.use)} before ${what}: ${asSentence(asPart(because))}`,
      tags,
    };
  }
  return { words: `Do not run the engine: running makes the damage grow. ${because}`, tags };
}
