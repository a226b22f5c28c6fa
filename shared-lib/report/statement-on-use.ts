import { AppError } from '../contract/errors.ts';
import type { Use } from '../model/visit.ts';
import { classesOfPlace } from '../parts/classes-of-place.ts';
import type { ComponentClass } from '../parts/component.ts';
import { isJudged } from '../ranking/rankable.ts';
import { listed } from '../wording/listed.ts';
import { standingAfterWork } from './after-work.ts';
import type { RankedFinding, ReportContext } from './context.ts';
import type { ReportTag } from './model.ts';
import { asPart, asSentence, counted, shortened } from './sentence.ts';

/** What may not be done while a part of such a class is not to be trusted, most specific first. */
const useOfClass: readonly [classes: readonly ComponentClass[], limit: string][] = [
  [
    ['lift-structure', 'load-holding', 'hydraulic-cylinder', 'lock-valve', 'chain', 'fork', 'hook'],
    'raise or hold nothing with it',
  ],
  [['steering', 'brakes', 'wheel', 'rim', 'articulation'], 'do not drive it'],
  [['fuel-under-pressure', 'fuel-high-pressure', 'fuel', 'gas-fuel'], 'do not start it'],
  [['interlock', 'shut-down', 'stop-control', 'guard', 'driveline'], 'do not start it'],
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
  return [...new Set(said)].join(' ');
}

/** How many findings the statement names; page one shows as many with a photo. */
const mostNamed = 3;

export interface StatementOnUse {
  readonly words: string;
  readonly tags: readonly ReportTag[];
}

/** What nobody has looked at may still hold a limit. */
function unseenWords({ record }: ReportContext): string {
  const unseen = record.standing.coverage.notExamined;
  if (unseen === 0) return '';
  const [were, them] = unseen === 1 ? ['was', 'it'] : ['were', 'them'];
  return asSentence(`${counted(unseen, 'agreed item')} ${were} not looked at: nothing is known of ${them}`);
}

const joined = (...sentences: readonly string[]): string => sentences.filter((each) => each !== '').join(' ');

/** No stop follows from the findings. That is no leave to use it: what is not judged or not seen is said as well. */
function withoutStop(context: ReportContext): StatementOnUse {
  const { ranked, record } = context;
  const worst = ranked.filter(({ line }) => line.tier === ranked[0]?.line.tier).slice(0, 2);
  if (worst.length === 0) {
    if (record.work !== undefined && record.standing.lines.length > 0)
      return { words: joined('All that was found was mended in this visit.', unseenWords(context)), tags: [] };
    const examined = record.standing.coverage.examined;
    const none = asSentence(`no finding is on record, from ${counted(examined, 'agreed item')} looked at`);
    return { words: joined(none, unseenWords(context)), tags: [] };
  }
  const unjudged = ranked.filter(({ finding }) => !isJudged(finding)).length;
  const limit =
    unjudged === 0
      ? 'No limit on use follows from what was found.'
      : `Whether it may be used is not said yet: ${counted(unjudged, 'finding')} not judged.`;
  const when = worst[0]?.line.tier === 3 ? 'To be seen to before it fails or costs more' : 'To keep an eye on';
  return {
    words: joined(limit, asSentence(`${when}: ${asPart(reasons(worst))}`), unseenWords(context)),
    tags: worst.map(({ tag }) => tag),
  };
}

/** Those named in the statement, and how many more weigh the same. */
function named(entries: readonly RankedFinding[], most: number): { first: readonly RankedFinding[]; because: string } {
  const first = entries.slice(0, most);
  const more = entries.length - first.length;
  return {
    first,
    because: joined(
      reasons(first),
      more > 0 ? asSentence(`and ${counted(more, 'more', 'more')} of the same weight`) : '',
    ),
  };
}

function stopOperating(entries: readonly RankedFinding[], most: number, context: ReportContext): StatementOnUse {
  const { first, because } = named(entries, most);
  const limits = limitsOf(first, context);
  const limit = limits.length === 0 ? '' : `: ${listed(limits)}`;
  return { words: `Do not operate this machine${limit}. ${because}`, tags: first.map(({ tag }) => tag) };
}

function fixBeforeWork(entries: readonly RankedFinding[], most: number, context: ReportContext): StatementOnUse {
  const { first, because } = named(entries, most);
  const onlyUnseen = first.every(({ line }) => line.state === 'not-examined');
  const what = onlyUnseen ? 'this is examined' : 'this is mended or examined';
  const where = whereItWorks(context.record.visit.use);
  return {
    words: asSentence(`not to be put to work${where} before ${what}: ${asPart(because)}`),
    tags: first.map(({ tag }) => tag),
  };
}

/**
 * May it be used? A sentence composed from the worst findings and the limit they set: never a lamp, never a fixed word, and
 * never that a machine is fit. A tag that the mechanic hung on it stops it whatever its tier; what stops the engine is
 * said beside what stops the machine.
 */
export function statementOnUse(before: ReportContext): StatementOnUse {
  const ranked = standingAfterWork(before);
  const context = { ...before, ranked };
  const stopped = ranked.filter(({ finding, line }) => line.tier === 0 || finding.doNotOperate);
  const beforeWork = ranked.filter(({ line }) => line.tier === 1);
  const notRun = ranked.filter((entry) => entry.line.tier === 2 || entry.finding.doNotRun);
  const onlyEngine = notRun.filter((entry) => !stopped.includes(entry)).slice(0, 1);
  const room = mostNamed - onlyEngine.length;
  const machine =
    stopped.length > 0
      ? stopOperating(stopped, room, context)
      : beforeWork.length > 0
        ? fixBeforeWork(beforeWork, room, context)
        : null;
  if (machine === null && notRun.length === 0) return withoutStop(context);
  if (machine === null) {
    const { first, because } = named(notRun, mostNamed);
    return {
      words: `Do not run the engine: running makes the damage grow. ${because}`,
      tags: first.map(({ tag }) => tag),
    };
  }
  const engine = onlyEngine.length === 0 ? '' : `Do not run its engine either. ${reasons(onlyEngine)}`;
  const tags = [...machine.tags, ...onlyEngine.map(({ tag }) => tag)];
  const seen = new Set<string>();
  return {
    words: joined(machine.words, engine),
    tags: tags.filter(({ findingId }) => !seen.has(findingId) && seen.add(findingId)),
  };
}
