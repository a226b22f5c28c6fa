import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { FloorMachine, MachinePage } from '../../../shared-lib/contract/machines.ts';
import type { Standing, StandingTag } from '../../../shared-lib/contract/standing.ts';
import { standingOf } from '../../../shared-lib/ranking/standing.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { lastTouchOfMachines } from '../journal/queries.ts';
import { allVisits, rowToVisit, shotCounts, visitsOf } from '../visits/queries.ts';
import { standingInputs } from '../visits/visit-record.ts';
import {
  allMachines,
  allMeters,
  fittedPartsOf,
  machineById,
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

const matches = (find: string, words: readonly (string | null | undefined)[]): boolean => {
  const text = words.join(' ').toLocaleLowerCase();
  return find
    .toLocaleLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
};

/** The floor: machines by when they were last touched, with the newest visit's tags. */
export const floor = (db: ReadableDb, find = ''): FloorMachine[] => {
  const owners = ownerNames(db);
  const newest = new Map<string, Tables['visit']>(allVisits(db).map((row) => [row.machine_id, row]));
  const touched = new Map(lastTouchOfMachines(db).map(({ machine_id, at_ms }) => [machine_id, at_ms]));
  const meters = Map.groupBy(allMeters(db), (meter) => meter.machineId);
  const machines = allMachines(db).filter(
    (row) =>
      find.trim() === '' ||
      matches(find.trim(), [
        row.kind,
        row.serial,
        row.engine_serial,
        row.year,
        row.bay,
        owners.get(row.id),
        newest.get(row.id)?.complaint,
      ]),
  );
  const visits = machines.flatMap(({ id }) => newest.get(id) ?? []);
  const inputs = visits.length > 0 ? standingInputs(db, visits) : new Map();
  const shots = shotCounts(db);
  return machines
    .map((row): FloorMachine => {
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
        touchedAtMs: touched.get(row.id) ?? row.created_at_ms,
      };
    })
    .sort((a, b) => b.touchedAtMs - a.touchedAtMs || a.machine.id.localeCompare(b.machine.id));
};
