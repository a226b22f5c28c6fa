import type { ReportGap } from '../contract/reports.ts';
import type { VisitRecord } from '../contract/visits.ts';
import type { Shop } from '../model/shop.ts';

/** What a report still lacks, each with the place where it is mended. Nothing here stops a draft. */
export function reportGaps(record: VisitRecord, shop: Shop): ReportGap[] {
  const { visit, machine, owner, standing, scope, shots } = record;
  const at = (place: ReportGap['at']['place'], id: string, what: string): ReportGap => ({ what, at: { place, id } });
  const because = new Map(standing.notLookedAt.map((item) => [item.path, item.because]));
  return [
    ...(shop.name.trim() === '' ? [at('shop', 'shop', 'The shop has no name.')] : []),
    ...(shop.phone.trim() === '' ? [at('shop', 'shop', 'No phone to ask the mechanic at.')] : []),
    ...(visit.personId === null ? [at('visit', visit.id, 'Nobody is named as the mechanic.')] : []),
    ...(owner === null ? [at('machine', machine.id, 'The machine has no owner.')] : []),
    ...(machine.serial.trim() === '' ? [at('machine', machine.id, 'The plate has no serial number.')] : []),
    ...(visit.meter.typed.trim() === '' ? [at('visit', visit.id, 'The hour meter was not read.')] : []),
    ...(visit.complaint.trim() === '' ? [at('visit', visit.id, 'The owner’s words are not written down.')] : []),
    ...standing.lines.flatMap(({ findingId, number, missing }) =>
      missing.map((what) => at('finding', findingId, `Finding ${number}: ${what}`)),
    ),
    ...scope.flatMap((item) =>
      because.has(item.path) && because.get(item.path) === null
        ? [at('scope', item.id, `Not examined, without a reason: ${spoken(standing, item.path)}.`)]
        : [],
    ),
    ...shots
      .filter(({ binned, seenFrom, id }) => !binned && seenFrom.trim() === '' && shows(record, id))
      .map(({ id, sequence }) => at('shot', id, `Photo ${sequence}: not said where it was seen from.`)),
  ];
}

const spoken = (standing: VisitRecord['standing'], path: string): string =>
  standing.notLookedAt.find((item) => item.path === path)?.spoken ?? '';

/** Only photos that are printed beside a finding need to say where they were seen from. */
const shows = (record: VisitRecord, shotId: string): boolean =>
  record.proofs.some((proof) => proof.shotId === shotId) ||
  record.marks.some((mark) => mark.shotId === shotId && mark.findingId !== null);
