import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { GatheredSeries } from '../../../shared-lib/contract/readings.ts';
import { samePartBetween } from '../../../shared-lib/parts/same-part.ts';
import { gatherSeries } from '../../../shared-lib/trends/gather-series.ts';
import type { ReadableDb } from '../database/connection.ts';
import { visitLayout } from '../findings/places.ts';
import { fittedPartsOf, metersOf } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { rowToVisit, visitById, visitsOf } from '../visits/queries.ts';
import { readingNow } from './compute-reading.ts';
import { readingsOf } from './queries.ts';

const staysOf = (db: ReadableDb, machineId: string) => {
  const meters = metersOf(db, machineId);
  return visitsOf(db, machineId).map((row) => {
    const visit = rowToVisit(row);
    return { visit, id: visit.id, hours: trueHours(visit.meter, meters) };
  });
};

/** Whether what was read at a place in two visits was read of one part; where that cannot be told, it was not. */
export const samePartOf = (db: ReadableDb, machineId: string) => {
  const stays = staysOf(db, machineId);
  const fittedParts = fittedPartsOf(db, machineId);
  return (place: string, before: string, after: string): boolean =>
    samePartBetween(place, before, after, stays, fittedParts) === 'the same';
};

export const seriesUpTo = (db: ReadableDb, visitId: string): GatheredSeries => {
  const here = visitById(db, visitId);
  if (!here) throw new AppError('not-found', { record: 'visit', id: visitId });
  const all = staysOf(db, here.machine_id);
  const stays = all.slice(0, all.findIndex(({ id }) => id === visitId) + 1);
  const readings = readingsOf(
    db,
    stays.map(({ id }) => id),
  );
  const before = stays.slice(0, -1).findLast(({ hours }) => hours !== null);
  return {
    series: gatherSeries(
      stays.map(({ visit, id, hours }) => ({
        id,
        hours,
        date: visit.date,
        hoursAreEstimate: visit.meter.estimate,
        readings: (readings.get(id) ?? []).map((reading) =>
          readingNow(db, reading, { conditions: visit.conditions, volts: visitLayout({ db }, id).layout.volts }),
        ),
      })),
      fittedPartsOf(db, here.machine_id),
    ),
    before: before === undefined || before.hours === null ? null : { date: before.visit.date, hours: before.hours },
  };
};
