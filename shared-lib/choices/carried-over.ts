import type { CarriedOver } from '../contract/choices.ts';
import type { Standing } from '../contract/standing.ts';
import type { Finding } from '../model/finding.ts';
import type { Decision } from './records.ts';
import { toldOf } from './told.ts';

/** One visit of the machine, as the return sees it. */
export interface ToldVisit {
  readonly date: string;
  readonly findings: readonly Finding[];
  readonly standing: Standing;
  readonly decisions: readonly Decision[];
}

interface Telling {
  readonly visit: ToldVisit;
  readonly finding: Finding;
}

/** The same condition from its first visit to this one. */
function tellingsOf(finding: Finding, now: ToldVisit, earlier: readonly ToldVisit[]): Telling[] {
  const all = earlier.flatMap((visit) => visit.findings.map((each): Telling => ({ visit, finding: each })));
  const byId = new Map(all.map((telling) => [telling.finding.id, telling]));
  const chain: Telling[] = [{ visit: now, finding }];
  const seen = new Set([finding.id]);
  for (let before = finding.trackOf; before !== null && !seen.has(before); ) {
    seen.add(before);
    const telling = byId.get(before);
    if (telling === undefined) break;
    chain.unshift(telling);
    before = telling.finding.trackOf;
  }
  return chain;
}

const lineOf = ({ visit, finding }: Telling) => visit.standing.lines.find(({ findingId }) => findingId === finding.id);

/** Of every tracked finding what was told before; anything that has changed since needs a new decision. */
export function carriedOver(now: ToldVisit, earlier: readonly ToldVisit[]): CarriedOver[] {
  return now.standing.lines.flatMap((line): CarriedOver[] => {
    const finding = now.findings.find(({ id }) => id === line.findingId);
    if (finding === undefined || finding.trackOf === null) return [];
    const tellings = tellingsOf(finding, now, earlier);
    const [first, before] = [tellings[0], tellings.at(-2)];
    if (first === undefined || before === undefined) return [];
    const lineBefore = lineOf(before);
    const decidedBefore = tellings
      .slice(0, -1)
      .flatMap((telling) =>
        telling.visit.decisions
          .filter(({ findingId }) => findingId === telling.finding.id)
          .map(({ decision, completed, words, by }) => ({ decision, completed, words, by, date: telling.visit.date })),
      );
    return [
      {
        findingId: finding.id,
        firstDate: first.visit.date,
        timesTold: tellings.length,
        rankBefore: lineBefore?.place ?? null,
        rankNow: line.place,
        tierBefore: lineBefore?.tier ?? null,
        tierNow: line.tier,
        newDecision: toldOf(before.finding, lineBefore?.tier ?? null) !== toldOf(finding, line.tier),
        decidedBefore: decidedBefore.toReversed(),
      },
    ];
  });
}
