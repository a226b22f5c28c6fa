import { AppError } from '../contract/errors.ts';
import type { VisitRecord } from '../contract/visits.ts';
import type { Finding } from '../model/finding.ts';
import type { Reading } from '../model/reading.ts';
import { speakComponent } from '../parts/speak-component.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { titleOf } from '../ranking/title.ts';
import { standingFindings } from '../ranking/to-rankable.ts';
import { sheetOf } from '../sheets/index.ts';
import { worstVerdict } from '../verdict/worst.ts';

/** Something of the visit that can speak for or against a suspicion. */
export type EvidenceSource = { readonly id: string; readonly atMs: number; readonly title: string } & (
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'finding'; readonly finding: Finding }
  /** Seen, heard, told, or a test drive. */
  | { readonly kind: 'observation'; readonly finding: Finding }
);

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout'>;

/** A record from elsewhere may name a place that this layout doesn't know: what it is called is said without it. */
function orWithoutPlace(speak: () => string, without: string): string {
  try {
    return speak();
  } catch (error) {
    if (error instanceof AppError) return without;
    throw error;
  }
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Its sheet, and where it was taken: `Combustion gas in the coolant, filler neck`. */
export function readingTitle(reading: Reading, { layout }: Pick<VisitRecord, 'layout'>): string {
  const name = sheetOf(reading.sheet)?.name ?? 'Reading';
  const place = orWithoutPlace(() => speakComponent(reading.at, layout.layout), '').toLowerCase();
  return name.toLowerCase().includes(place) ? name : `${name}, ${place}`;
}

function sourceOfFinding(finding: Finding, { layout }: Told, units: UnitSystem): EvidenceSource {
  const { id, createdAtMs, kind, words } = finding;
  if (kind === 'condition')
    return {
      kind: 'finding',
      id,
      atMs: createdAtMs,
      title: orWithoutPlace(() => titleOf(finding, layout.layout, units), words.trim() || `finding ${finding.number}`),
      finding,
    };
  const said = words.trim() === '' ? 'not said what was seen' : words.trim();
  return { kind: 'observation', id, atMs: createdAtMs, title: capitalised(said), finding };
}

const sourceOfReading = (reading: Reading, record: Told): EvidenceSource => ({
  kind: 'reading',
  id: reading.id,
  atMs: reading.takenAtMs,
  title: readingTitle(reading, record),
  reading,
});

/** Any finding or reading of the visit by its id, also one that stands no more; null for one that is gone. */
export function sourceById(
  { findingId, readingId }: { readonly findingId: string | null; readonly readingId: string | null },
  record: Told,
  units: UnitSystem = 'metric',
): EvidenceSource | null {
  const finding = record.findings.find(({ id }) => id === findingId);
  if (finding !== undefined) return sourceOfFinding(finding, record, units);
  const reading = record.readings.find(({ id }) => id === readingId);
  return reading === undefined ? null : sourceOfReading(reading, record);
}

/** All that can speak, in the order it came: what was read, found, looked for and not found, seen or told. */
export function evidenceSources(record: Told, units: UnitSystem = 'metric'): readonly EvidenceSource[] {
  const readings = record.readings.filter(
    ({ notTakenBecause, results }) =>
      notTakenBecause === null && worstVerdict(results.map(({ verdict }) => verdict)) !== 'not taken',
  );
  const findings = standingFindings(record.findings).filter(({ state }) => state !== 'not-examined');
  return [
    ...readings.map((reading) => sourceOfReading(reading, record)),
    ...findings.map((finding) => sourceOfFinding(finding, record, units)),
  ].sort((a, b) => a.atMs - b.atMs || a.id.localeCompare(b.id));
}
