import { openDecisions } from '../choices/open-decisions.ts';
import type { ReportGap } from '../contract/reports.ts';
import type { VisitRecord } from '../contract/visits.ts';
import type { Shop } from '../model/shop.ts';
import { sayIsoDay } from './dates.ts';

type GapPlace = ReportGap['at']['place'];

const needed = (place: GapPlace, id: string, what: string): ReportGap => ({ what, at: { place, id }, needed: true });
const wanted = (place: GapPlace, id: string, what: string): ReportGap => ({ what, at: { place, id }, needed: false });

/**
 * What a report still lacks, each with the place where it is mended. Nothing here stops a draft; what is needed stops an
 * issue: who says it, of which machine, at what hours, every finding whole, and the decisions once deciding has begun.
 *
 * Source: the elements of ISO/IEC 17020:2012, 7.4.2 (issuing body, date, item inspected, client, results).
 */
export function reportGaps(record: VisitRecord, shop: Shop): ReportGap[] {
  const { visit, machine, owner, standing, scope, shots } = record;
  const because = new Map(standing.notLookedAt.map((item) => [item.path, item.because]));
  return [
    ...(shop.name.trim() === '' ? [needed('shop', 'shop', 'The shop has no name.')] : []),
    ...(shop.phone.trim() === '' ? [wanted('shop', 'shop', 'No phone to ask the mechanic at.')] : []),
    ...(visit.personId === null ? [needed('visit', visit.id, 'Nobody is named as the mechanic.')] : []),
    ...(owner === null ? [needed('machine', machine.id, 'The machine has no owner.')] : []),
    ...(machine.serial.trim() === '' ? [wanted('machine', machine.id, 'The plate has no serial number.')] : []),
    ...(visit.meter.typed.trim() === '' ? [needed('visit', visit.id, 'The hour meter was not read.')] : []),
    ...(visit.complaint.trim() === '' ? [needed('visit', visit.id, 'The owner’s words are not written down.')] : []),
    ...standing.lines.flatMap(({ findingId, number, missing }) =>
      missing.map((what) => needed('finding', findingId, `Finding ${number}: ${what}`)),
    ),
    ...scope.flatMap((item) =>
      because.has(item.path) && because.get(item.path) === null
        ? [needed('scope', item.id, `Not examined, without a reason: ${spoken(standing, item.path)}.`)]
        : [],
    ),
    ...(record.before?.old ?? [])
      .filter(({ answer, takenUpAs }) => answer === null && takenUpAs === null)
      .map(({ tag, date }) =>
        needed('before', visit.id, `Finding ${tag.number} of ${sayIsoDay(date)}: not said what has become of it.`),
      ),
    ...decisionGaps(record),
    ...workGaps(record),
    ...shots
      .filter(({ binned, seenFrom, id }) => !binned && seenFrom.trim() === '' && shows(record, id))
      .map(({ id, sequence }) => wanted('shot', id, `Photo ${sequence}: not said where it was seen from.`)),
  ];
}

const spoken = (standing: VisitRecord['standing'], path: string): string =>
  standing.notLookedAt.find((item) => item.path === path)?.spoken ?? '';

function decisionGaps({ visit, standing, choices }: VisitRecord): ReportGap[] {
  const ranked = standing.lines.map(({ findingId }) => findingId);
  if (ranked.length === 0) return [];
  if (choices === undefined || choices.decisions.length === 0)
    return [wanted('decision', visit.id, 'Nothing is decided yet: it goes out for the owner to decide.')];
  const numberOf = new Map(standing.lines.map(({ findingId, number }) => [findingId, number]));
  return openDecisions(choices, ranked).map(({ findingId, why }) =>
    needed(
      'decision',
      findingId,
      why === 'undecided'
        ? `Finding ${numberOf.get(findingId)}: nobody has decided on it.`
        : `Finding ${numberOf.get(findingId)}: what was told has changed since it was decided on.`,
    ),
  );
}

/** A machine that was worked on goes out with what was proved and how it may be used. */
function workGaps({ visit, standing, work }: VisitRecord): ReportGap[] {
  if (work === undefined) return [];
  const numberOf = new Map(standing.lines.map(({ findingId, number }) => [findingId, number]));
  const named = (findingId: string | null) =>
    findingId === null ? 'Other work' : `Finding ${numberOf.get(findingId) ?? ''}`;
  return [
    ...work.planned.map(({ findingId }) =>
      wanted('work', visit.id, `${named(findingId)}: agreed, no work written down.`),
    ),
    ...work.items
      .filter(({ id }) => work.unproven.includes(id))
      .map(({ findingId }) => wanted('work', visit.id, `${named(findingId)}: no test after the work.`)),
    ...((work.handOver?.limits ?? '').trim() === ''
      ? [wanted('work', visit.id, 'The hand-over does not say how it may be used.')]
      : []),
    ...((work.handOver?.comeBack ?? '').trim() === ''
      ? [wanted('work', visit.id, 'The hand-over does not say when to come back.')]
      : []),
  ];
}

/** Only photos that are printed beside a finding need to say where they were seen from. */
const shows = (record: VisitRecord, shotId: string): boolean =>
  record.proofs.some((proof) => proof.shotId === shotId) ||
  record.marks.some((mark) => mark.shotId === shotId && mark.findingId !== null);
