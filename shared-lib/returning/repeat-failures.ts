import type { RepeatFailure } from '../contract/returning.ts';
import type { Finding } from '../model/finding.ts';
import { formatPath } from '../parts/format-location.ts';
import { parseLocation } from '../parts/parse-location.ts';
import { causeGraph, reachable } from '../ranking/cause-graph.ts';
import { mendedIn, type VisitNow, type VisitThen } from './visit-then.ts';

/** Within either of them the same failure of the same part asks for its root. Source: handbook, chapter 8, common practice. */
const repeatWithinHours = 500;
const repeatWithinMonths = 12;

const pathOf = ({ locations }: Finding): string | null => {
  const [first] = locations;
  return first === undefined ? null : formatPath(parseLocation(first).path);
};

/** Whole months are counted by the calendar: the same day a year later is twelve. */
function withinMonths(from: string, to: string): boolean {
  const [year = 0, month = 1, day = 1] = from.split('-').map(Number);
  return Date.parse(to) <= Date.UTC(year, month - 1 + repeatWithinMonths, day);
}

/** The same part, failed in the same way again after it was mended here, with the causes that were left then. */
export function repeatFailures(now: VisitNow, earlier: readonly VisitThen[]): RepeatFailure[] {
  const failures = earlier.flatMap((visit) => {
    const mended = mendedIn(visit);
    return visit.input.findings.filter(({ id }) => mended.has(id)).map((finding) => ({ visit, finding, mended }));
  });
  const ranked = new Map(now.standing.lines.map((line) => [line.findingId, line]));
  return now.input.findings.flatMap((finding): RepeatFailure[] => {
    if (!ranked.has(finding.id)) return [];
    const before = failures.findLast(
      (each) =>
        each.finding.id === finding.trackOf ||
        (each.finding.defect !== null &&
          each.finding.defect === finding.defect &&
          pathOf(each.finding) === pathOf(finding)),
    );
    if (before === undefined) return [];
    const { visit, finding: earlierFinding, mended } = before;
    const hours = now.trueHours === null || visit.trueHours === null ? null : now.trueHours - visit.trueHours;
    if (!withinMonths(visit.date, now.date) && (hours === null || hours > repeatWithinHours)) return [];
    const lines = new Map(visit.standing.lines.map((line) => [line.findingId, line]));
    const graph = causeGraph([...lines.keys()], visit.input.links);
    const roots = [...reachable(earlierFinding.id, graph.causesOf)].filter((id) => !mended.has(id));
    return [
      {
        findingId: finding.id,
        number: finding.number,
        earlierNumber: earlierFinding.number,
        mendedOn: visit.date,
        hoursSince: hours,
        rootsLeft: roots.flatMap((id) => lines.get(id)?.title ?? []),
      },
    ];
  });
}
