import type { ScopeItem, Visit } from '../../../shared-lib/model/visit.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, listed, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

export const rowToVisit = (row: Tables['visit']): Visit => ({
  id: row.id,
  machineId: row.machine_id,
  layoutId: row.layout_id,
  personId: row.person_id,
  date: row.date,
  complaint: row.complaint,
  use: {
    road: row.use_road === 1,
    slope: row.use_slope === 1,
    peopleNear: row.use_people_near === 1,
    exposureHours: row.exposure_hours,
  },
  conditions: JSON.parse(row.conditions),
  meter: {
    meterId: row.meter_id,
    typed: row.meter_typed,
    reading: row.meter_reading,
    estimate: row.meter_estimate === 1,
  },
  currentPart: row.current_part,
  openedAtMs: row.opened_at_ms,
  leftAtMs: row.left_at_ms,
});

export const rowToScopeItem = (row: Tables['scope_item']): ScopeItem => ({
  id: row.id,
  visitId: row.visit_id,
  path: row.path,
  position: row.position,
  notExaminedBecause: row.not_examined_because,
  notApplicableBecause: row.not_applicable_because,
});

export const visitById = first((id: Param<string>) => build.selectFrom('visit').selectAll().where('id', '=', id));

/** A machine's visits in the order they happened. */
export const visitsOf = all((machineId: Param<string>) =>
  build
    .selectFrom('visit')
    .selectAll()
    .where('machine_id', '=', machineId)
    .orderBy('date')
    .orderBy('opened_at_ms')
    .orderBy('id'),
);

const visitsOfMachines = all((machineIds: Param<readonly string[]>) =>
  build
    .selectFrom('visit')
    .selectAll()
    .where('machine_id', 'in', listed(machineIds))
    .orderBy('date')
    .orderBy('opened_at_ms')
    .orderBy('id'),
);

/** Each machine's newest visit. */
export const newestVisits = (db: ReadableDb, machineIds: readonly string[]): Map<string, Tables['visit']> =>
  new Map(visitsOfMachines(db, machineIds).map((row) => [row.machine_id, row]));

export const scopeOf = all((visitIds: Param<readonly string[]>) =>
  build.selectFrom('scope_item').selectAll().where('visit_id', 'in', listed(visitIds)).orderBy('position'),
);

const shotsCounted = all(() =>
  build
    .selectFrom('shot')
    .select(({ fn }) => ['visit_id', fn.countAll<number>().as('shots')])
    .where('binned', '=', 0)
    .groupBy('visit_id'),
);

export const shotCounts = (db: ReadableDb): Map<string, number> =>
  new Map(shotsCounted(db).map(({ visit_id, shots }) => [visit_id, shots]));
