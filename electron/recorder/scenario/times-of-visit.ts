import type { ScenarioVisit } from '../../../shared-lib/scenario/shape.ts';

const minuteMs = 60_000;

/** When things of a visit happened, for a file that gives times to its photos only. */
export interface TimesOfVisit {
  readonly openedAtMs: number;
  readonly findingAtMs: (findingId: string) => number;
  readonly readingAtMs: (readingId: string) => number;
}

/**
 * A believable day: in at ten past eight, readings a quarter of an hour apart unless the file says when, a finding written
 * down a few minutes after the photo or the reading that shows it, else after the finding before.
 *
 * @param zoneOffsetMin  the shop's, minutes east of UTC
 */
export const timesOfVisit = (visit: ScenarioVisit, zoneOffsetMin: number): TimesOfVisit => {
  const midnightMs = Date.parse(`${visit.date}T00:00:00Z`) - zoneOffsetMin * minuteMs;
  const openedAtMs = midnightMs + (8 * 60 + 10) * minuteMs;
  const readings = new Map(
    (visit.readings ?? []).map(({ id, takenAt }, index) => [
      id,
      takenAt === undefined ? openedAtMs + (20 + 15 * index) * minuteMs : Date.parse(takenAt),
    ]),
  );
  const photos = new Map<string, number>();
  for (const { takenAt, marks = [] } of visit.shots ?? []) {
    const takenAtMs = takenAt === undefined ? Number.NaN : Date.parse(takenAt);
    for (const { finding } of marks) {
      if (finding !== undefined && !Number.isNaN(takenAtMs)) {
        photos.set(finding, Math.max(takenAtMs, photos.get(finding) ?? takenAtMs));
      }
    }
  }
  const findings = new Map<string, number>();
  let last = openedAtMs + 30 * minuteMs;
  for (const { id, shownBy = [] } of visit.findings) {
    const photo = photos.get(id);
    const reading = shownBy.map((by) => readings.get(by)).find((atMs) => atMs !== undefined);
    const shownAt = photo ?? reading;
    last = shownAt === undefined ? last + 6 * minuteMs : shownAt + 4 * minuteMs;
    findings.set(id, last);
  }
  return {
    openedAtMs,
    findingAtMs: (id) => findings.get(id) ?? openedAtMs,
    readingAtMs: (id) => readings.get(id) ?? openedAtMs,
  };
};
