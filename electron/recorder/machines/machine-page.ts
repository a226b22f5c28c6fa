import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { FloorMachine, MachinePage } from '../../../shared-lib/contract/machines.ts';
import type { Standing, StandingTag } from '../../../shared-lib/contract/standing.ts';
import { standingOf } from '../../../shared-lib/ranking/standing.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { lastTouchOfMachines } from '../journal/queries.ts';
import { find } from '../search/find.ts';
import { newestVisits, rowToVisit, shotCounts, visitsOf } from '../visits/queries.ts';
import { standingInputs } from '../visits/stood-visit.ts';
import {
  allMachines,
  allMeters,
  fittedPartsOf,
  machineById,
  machinesById,
  metersOf,
  newestLayout,
  ownerNames,
  ownerNow,
  rowToLayout,
  rowToMachine,
} from './queries.ts';
import { trueHours } from './true-hours.ts';

const tagsOf = (standing: Standing): StandingTag[] =>
  standing.lines.map(({ findingId, number, tier, state }) => ({ findingId, number, tier, state }));

/** A machine with its visits. @throws AppError 'not-found' */
export const machinePage = (db: ReadableDb, id: string): MachinePage => {
  const machine = machineById(db, id);
  const layout = newestLayout(db, id);
  if (!machine || !layout) throw new AppError('not-found', { record: 'machine', id });
  const meters = metersOf(db, id);
  const rows = visitsOf(db, id);
  const inputs = standingInputs(db, rows);
  const shots = shotCounts(db);
  return {
    machine: rowToMachine(machine),
    layout: rowToLayout(layout),
    owner: ownerNow(db, id),
    meters,
    fittedParts: fittedPartsOf(db, id),
    visits: rows.map((row) => {
      const input = inputs.get(row.id);
      const visit = rowToVisit(row);
      return {
        visit,
        trueHours: trueHours(visit.meter, meters),
        tags: input ? tagsOf(standingOf(input)) : [],
        shots: shots.get(row.id) ?? 0,
      };
    }),
  };
};

type FoundBy = NonNullable<FloorMachine['found']>;

/** Machines that the search found, best first, each with the words it was first found by. */
const foundMachines = (db: ReadableDb, typed: string): Map<string, FoundBy> => {
  const found = new Map<string, FoundBy>();
  for (const { machine_id, visit_id, finding_id, words } of find(db, typed)) {
    if (!found.has(machine_id)) found.set(machine_id, { words, visitId: visit_id, findingId: finding_id });
  }
  return found;
};

/** The floor: machines by when they were last touched, or as found, with the newest visit's tags. */
export const floor = (db: ReadableDb, typed = '', most = Number.POSITIVE_INFINITY): FloorMachine[] => {
  const found = typed.trim() === '' ? null : foundMachines(db, typed);
  const touched = new Map(lastTouchOfMachines(db).map(({ machine_id, at_ms }) => [machine_id, at_ms]));
  const touchedAt = (row: Tables['machine']) => touched.get(row.id) ?? row.created_at_ms;
  const places = found && new Map([...found.keys()].map((id, index) => [id, index]));
  const machines = (found ? machinesById(db, [...found.keys()]) : allMachines(db))
    .sort((a, b) =>
      places
        ? (places.get(a.id) ?? 0) - (places.get(b.id) ?? 0)
        : touchedAt(b) - touchedAt(a) || a.id.localeCompare(b.id),
    )
    .slice(0, most);
  const owners = ownerNames(db);
  const newest = newestVisits(
    db,
    machines.map(({ id }) => id),
  );
  const meters = Map.groupBy(allMeters(db), (meter) => meter.machineId);
  const inputs = newest.size > 0 ? standingInputs(db, [...newest.values()]) : new Map();
  const shots = shotCounts(db);
  return machines.map((row): FloorMachine => {
    const visitRow = newest.get(row.id);
    const visit = visitRow ? rowToVisit(visitRow) : null;
    const input = visit ? inputs.get(visit.id) : undefined;
    const standing: Standing | null = input ? standingOf(input) : null;
    return {
      machine: rowToMachine(row),
      ownerName: owners.get(row.id) ?? null,
      hours: visit ? trueHours(visit.meter, meters.get(row.id) ?? []) : null,
      hoursAreEstimate: visit?.meter.estimate ?? false,
      visitId: visit?.id ?? null,
      visitDate: visit?.date ?? null,
      visitOpen: visit !== null && visit.leftAtMs === null,
      complaint: visit?.complaint ?? '',
      tags: standing ? tagsOf(standing) : [],
      doNotOperate: standing?.lines.some(({ tier }) => tier === 0) ?? false,
      unfinishedFindings: standing?.lines.filter(({ missing }) => missing.length > 0).length ?? 0,
      shots: visit ? (shots.get(visit.id) ?? 0) : 0,
      found: found?.get(row.id) ?? null,
      touchedAtMs: touchedAt(row),
    };
  });
};
