import { Layout } from '../../../shared-lib/model/layout.ts';
import type { FittedPart, LayoutVersion, Machine, Meter, Owner } from '../../../shared-lib/model/machine.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, listed, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';
import { Memory } from '../memory.ts';

const optional = <K extends string>(key: K, value: string | null): { [P in K]?: string } =>
  (value === null ? {} : { [key]: value }) as { [P in K]?: string };

export const rowToMachine = (row: Tables['machine']): Machine => ({
  id: row.id,
  kind: row.kind,
  serial: row.serial,
  createdAtMs: row.created_at_ms,
  ...optional('year', row.year),
  ...optional('engineSerial', row.engine_serial),
  ...optional('note', row.note),
  ...optional('bay', row.bay),
});

export const rowToOwner = (row: Tables['owner']): Owner => ({
  id: row.id,
  name: row.name,
  kind: row.kind,
  capacity: row.capacity,
  ...optional('place', row.place),
  ...optional('phone', row.phone),
  ...optional('note', row.note),
});

export const rowToMeter = (row: Tables['meter']): Meter => ({
  id: row.id,
  machineId: row.machine_id,
  name: row.name,
  offsetHours: row.offset_hours,
  from: row.from_date,
  until: row.until_date,
  dead: row.dead === 1,
});

/** One object for one text, so that what is computed from a layout and kept beside it is found again. */
const layouts = new Memory<Layout>(2_000);

export const rowToLayout = (row: Tables['layout']): LayoutVersion => ({
  id: row.id,
  machineId: row.machine_id,
  version: row.version,
  layout: layouts.get(row.layout, () => Layout.parse(JSON.parse(row.layout))),
});

export const rowToFittedPart = (row: Tables['fitted_part']): FittedPart => ({
  id: row.id,
  machineId: row.machine_id,
  path: row.path,
  kind: row.kind,
  fittedVisitId: row.fitted_visit_id,
  fittedHours: row.fitted_hours,
  removedVisitId: row.removed_visit_id,
  removedHours: row.removed_hours,
});

export const machineById = first((id: Param<string>) => build.selectFrom('machine').selectAll().where('id', '=', id));

export const machinesById = all((ids: Param<readonly string[]>) =>
  build.selectFrom('machine').selectAll().where('id', 'in', listed(ids)),
);

export const allMachines = all(() => build.selectFrom('machine').selectAll());

export const newestLayout = first((machineId: Param<string>) =>
  build.selectFrom('layout').selectAll().where('machine_id', '=', machineId).orderBy('version', 'desc').limit(1),
);

export const layoutById = first((id: Param<string>) => build.selectFrom('layout').selectAll().where('id', '=', id));

export const layoutsById = all((ids: Param<readonly string[]>) =>
  build.selectFrom('layout').selectAll().where('id', 'in', listed(ids)),
);

const meterRows = all((machineId: Param<string>) =>
  build.selectFrom('meter').selectAll().where('machine_id', '=', machineId).orderBy('from_date').orderBy('id'),
);

export const metersOf = (db: ReadableDb, machineId: string): Meter[] => meterRows(db, machineId).map(rowToMeter);

const allMeterRows = all(() => build.selectFrom('meter').selectAll());

export const allMeters = (db: ReadableDb): Meter[] => allMeterRows(db).map(rowToMeter);

const fittedPartRows = all((machineId: Param<string>) =>
  build.selectFrom('fitted_part').selectAll().where('machine_id', '=', machineId).orderBy('id'),
);

export const fittedPartsOf = (db: ReadableDb, machineId: string): FittedPart[] =>
  fittedPartRows(db, machineId).map(rowToFittedPart);

const ownerRow = first((machineId: Param<string>) =>
  build
    .selectFrom('ownership')
    .innerJoin('owner', 'owner.id', 'ownership.owner_id')
    .selectAll('owner')
    .where('ownership.machine_id', '=', machineId)
    .where('ownership.until_date', 'is', null)
    .orderBy('ownership.id', 'desc')
    .limit(1),
);

/** Who owns it now: the ownership that has not ended. */
export const ownerNow = (db: ReadableDb, machineId: string): Owner | null => {
  const row = ownerRow(db, machineId);
  return row ? rowToOwner(row) : null;
};

export const openOwnership = first((machineId: Param<string>) =>
  build
    .selectFrom('ownership')
    .selectAll()
    .where('machine_id', '=', machineId)
    .where('until_date', 'is', null)
    .orderBy('id', 'desc')
    .limit(1),
);

const namesOfOwners = all(() =>
  build
    .selectFrom('ownership')
    .innerJoin('owner', 'owner.id', 'ownership.owner_id')
    .select(['ownership.machine_id', 'owner.name'])
    .where('ownership.until_date', 'is', null)
    .orderBy('ownership.id'),
);

export const ownerNames = (db: ReadableDb): Map<string, string> =>
  new Map(namesOfOwners(db).map(({ machine_id, name }) => [machine_id, name]));

/** The machines that somebody owns or has owned. */
export const machinesOfOwner = all((ownerId: Param<string>) =>
  build.selectFrom('ownership').select('machine_id').where('owner_id', '=', ownerId),
);

const visitIds = (machineId: Param<string>) =>
  build.selectFrom('visit').select('id').where('machine_id', '=', machineId);

const placesOfFindings = all((machineId: Param<string>) =>
  build
    .selectFrom('finding_location')
    .innerJoin('finding', 'finding.id', 'finding_location.finding_id')
    .select('finding_location.place as place')
    .where('finding.binned', '=', 0)
    .where('finding.visit_id', 'in', visitIds(machineId)),
);

const placesInScope = all((machineId: Param<string>) =>
  build.selectFrom('scope_item').select('path as place').where('visit_id', 'in', visitIds(machineId)),
);

const placesOfShots = all((machineId: Param<string>) =>
  build
    .selectFrom('shot')
    .select('component as place')
    .where('component', 'is not', null)
    .where('visit_id', 'in', visitIds(machineId)),
);

/** Every place a machine's record names: findings, scope, shots and fitted parts. */
export const placesOf = (db: ReadableDb, machineId: string): string[] => {
  const named = [placesOfFindings, placesInScope, placesOfShots].flatMap((places) => places(db, machineId));
  return [
    ...new Set([
      ...named.flatMap(({ place }) => place ?? []),
      ...fittedPartRows(db, machineId).map(({ path }) => path),
    ]),
  ];
};

export const machineBySerial = first((kind: Param<string>, serial: Param<string>) =>
  build.selectFrom('machine').select('id').where('kind', '=', kind).where('serial', '=', serial),
);
