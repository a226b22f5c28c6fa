import { AppError } from '../contract/errors.ts';
import type { StandingLine } from '../contract/standing.ts';
import type { Finding } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import type { Mark } from '../model/mark.ts';
import type { Reading } from '../model/reading.ts';
import type { Person } from '../model/shop.ts';
import type { Shot } from '../model/shot.ts';
import { speakLocation } from '../parts/speak-location.ts';
import { reportWords } from '../wording/report.ts';
import type { ReportTag } from './model.ts';
import type { ReportSource } from './source.ts';

/** One ranked finding with its place in the standing and what shows it. */
export interface RankedFinding {
  readonly finding: Finding;
  readonly line: StandingLine;
  readonly tag: ReportTag;
  readonly shots: readonly Shot[];
  readonly readings: readonly Reading[];
}

/** The source with its threads tied together, once, for every section. */
export interface ReportContext extends ReportSource {
  readonly layout: Layout;
  readonly mechanic: Person | null;
  readonly shots: readonly Shot[];
  readonly ranked: readonly RankedFinding[];
  readonly findingById: (id: string) => Finding | null;
  readonly personName: (id: string | null) => string | null;
  readonly marksOn: (shotId: string, findingId: string) => readonly Mark[];
  readonly place: (location: string | null | undefined, options?: { readonly long?: boolean }) => string;
  /** Whether this layout has it: a record from elsewhere may hold a place that it doesn't. */
  readonly isKnownPlace: (location: string) => boolean;
}

/** A place as people say it. A record from elsewhere may hold one that this layout doesn't know: then nobody has said where. */
function placeSpeaker(layout: Layout): ReportContext['place'] {
  return (location, options = {}) => {
    if (location === null || location === undefined || location === '') return reportWords.placeNotSaid;
    try {
      return speakLocation(location, layout, options);
    } catch (error) {
      if (error instanceof AppError) return reportWords.placeNotSaid;
      throw error;
    }
  };
}

export function contextOf(source: ReportSource): ReportContext {
  const { record, people } = source;
  const shots = record.shots.filter(({ binned }) => !binned).toSorted((a, b) => a.sequence - b.sequence);
  const findings = new Map(record.findings.map((finding) => [finding.id, finding]));
  const person = (id: string | null) => people.find((each) => each.id === id) ?? null;
  const marksOf = (findingId: string) => record.marks.filter((mark) => mark.findingId === findingId);
  const proofsOf = (findingId: string) => record.proofs.filter((proof) => proof.findingId === findingId);

  const ranked = record.standing.lines.flatMap((line): RankedFinding[] => {
    const finding = findings.get(line.findingId);
    if (!finding) return [];
    const shownBy = new Set([
      ...proofsOf(finding.id).map(({ shotId }) => shotId),
      ...marksOf(finding.id).map(({ shotId }) => shotId),
    ]);
    const readingIds = new Set(proofsOf(finding.id).map(({ readingId }) => readingId));
    return [
      {
        finding,
        line,
        tag: { findingId: line.findingId, number: line.number, tier: line.tier, state: line.state },
        shots: shots.filter(({ id }) => shownBy.has(id)),
        readings: record.readings.filter(({ id }) => readingIds.has(id)),
      },
    ];
  });

  const place = placeSpeaker(record.layout.layout);
  return {
    ...source,
    layout: record.layout.layout,
    mechanic: person(record.visit.personId),
    shots,
    ranked,
    findingById: (id) => findings.get(id) ?? null,
    personName: (id) => person(id)?.name ?? null,
    marksOn: (shotId, findingId) => marksOf(findingId).filter((mark) => mark.shotId === shotId),
    place,
    isKnownPlace: (location) => place(location) !== reportWords.placeNotSaid,
  };
}
