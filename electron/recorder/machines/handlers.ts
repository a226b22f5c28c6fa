import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { CheckedInputOf } from '../../../shared-lib/contract/operations.ts';
import { isoDayAt } from '../../../shared-lib/model/wall-clock.ts';
import { layoutOrphans } from '../../../shared-lib/parts/layout-orphans.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { visitsOf } from '../visits/queries.ts';
import { fittedPartHandlers } from './fitted-parts.ts';
import { floor, machinePage } from './machine-page.ts';
import { newestLayout, openOwnership, placesOf, rowToLayout, rowToMeter, rowToOwner } from './queries.ts';

type OwnerInput = NonNullable<CheckedInputOf<'machine.add'>['owner']>;

const plateColumns = ({ engineSerial, ...same }: CheckedInputOf<'machine.change'>['plate']) => ({
  ...same,
  engine_serial: engineSerial,
});

const ownerRow = (id: string, owner: OwnerInput): Tables['owner'] => ({
  id,
  name: owner.name,
  kind: owner.kind,
  capacity: owner.capacity,
  place: owner.place ?? null,
  phone: owner.phone ?? null,
  note: owner.note ?? null,
});

const takeOwner = (
  { newId }: Context,
  writer: RecordWriter,
  machineId: string,
  owner: OwnerInput,
  from: string | null,
): void => {
  const row = ownerRow(newId(), owner);
  writer.insert('owner', row);
  writer.insert('ownership', {
    id: newId(),
    machine_id: machineId,
    owner_id: row.id,
    from_date: from,
    until_date: null,
  });
};

export const machineHandlers: Handlers = {
  'machine.floor': { read: ({ db }, { find, most }) => floor(db, find, most) },
  'machine.page': { read: ({ db }, { id }) => machinePage(db, id) },
  'machine.add': {
    change: (context, writer, { plate, layout, owner, meter }) => {
      const { newId } = context;
      const id = newId();
      writer.about({ machineId: id });
      writer.insert('machine', {
        id,
        kind: plate.kind,
        serial: plate.serial,
        year: plate.year ?? null,
        engine_serial: plate.engineSerial ?? null,
        note: plate.note ?? null,
        bay: plate.bay ?? null,
        created_at_ms: context.clock(),
      });
      writer.insert('layout', { id: newId(), machine_id: id, version: 1, layout: JSON.stringify(layout) });
      writer.insert('meter', {
        id: newId(),
        machine_id: id,
        name: meter?.name ?? 'hour meter',
        offset_hours: meter?.offsetHours ?? 0,
        from_date: null,
        until_date: null,
        dead: 0,
      });
      if (owner) takeOwner(context, writer, id, owner, null);
      return machinePage(context.db, id);
    },
  },
  'machine.change': {
    change: ({ db }, writer, { id, plate }) => {
      writer.about({ machineId: id });
      writer.update('machine', id, plateColumns(plate));
      return machinePage(db, id);
    },
  },
  'machine.setLayout': {
    change: ({ db, newId }, writer, { id, layout }) => {
      writer.about({ machineId: id });
      const newest = newestLayout(db, id);
      if (!newest) throw new AppError('not-found', { record: 'machine', id });
      const places = layoutOrphans(placesOf(db, id), layout);
      if (places.length > 0) throw new AppError('layout-orphans', { places });
      if (JSON.stringify(rowToLayout(newest).layout) === JSON.stringify(layout)) return machinePage(db, id);
      const next = { id: newId(), machine_id: id, version: newest.version + 1, layout: JSON.stringify(layout) };
      writer.insert('layout', next);
      // An open visit is worked on the newest layout; one that has left keeps the layout it was worked on.
      for (const visit of visitsOf(db, id)) {
        if (visit.left_at_ms === null) writer.update('visit', visit.id, { layout_id: next.id });
      }
      return machinePage(db, id);
    },
  },
  'machine.setOwner': {
    change: (context, writer, { id, owner, from }) => {
      writer.about({ machineId: id });
      writer.row('machine', id);
      const open = openOwnership(context.db, id);
      if (open)
        writer.update('ownership', open.id, {
          until_date: from ?? isoDayAt(context.clock(), context.zoneOffsetMin()),
        });
      takeOwner(context, writer, id, owner, from ?? null);
      return machinePage(context.db, id);
    },
  },
  'owner.change': {
    change: (_context, writer, { id, ...fields }) => {
      writer.update('owner', id, fields);
      return rowToOwner(writer.row('owner', id) as never);
    },
  },
  'meter.add': {
    change: ({ newId }, writer, { machineId, offsetHours, from, until, dead, name }) => {
      writer.about({ machineId });
      writer.row('machine', machineId);
      const row = {
        id: newId(),
        machine_id: machineId,
        name,
        offset_hours: offsetHours,
        from_date: from,
        until_date: until,
        dead: dead ? 1 : 0,
      } as const;
      writer.insert('meter', row);
      return rowToMeter(row);
    },
  },
  'meter.change': {
    change: (_context, writer, { id, name, offsetHours, from, until, dead }) => {
      writer.about({ machineId: String(writer.row('meter', id).machine_id) });
      writer.update('meter', id, {
        name,
        offset_hours: offsetHours,
        from_date: from,
        until_date: until,
        dead: dead === undefined ? undefined : dead ? 1 : 0,
      });
      return rowToMeter(writer.row('meter', id) as never);
    },
  },
  ...fittedPartHandlers,
};
