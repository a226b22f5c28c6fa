import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { CheckedInputOf } from '../../../shared-lib/contract/operations.ts';
import { coverItems } from '../../../shared-lib/coverage/coverage.ts';
import type { Visit } from '../../../shared-lib/model/visit.ts';
import { proposedScope } from '../../../shared-lib/parts/proposed-scope.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { metersOf, newestLayout, rowToLayout } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { rowToScopeItem, rowToVisit, scopeOf, visitsOf } from './queries.ts';
import { visitRecord } from './visit-record.ts';

const flag = (value: boolean): 0 | 1 => (value ? 1 : 0);

type Meter = NonNullable<CheckedInputOf<'visit.open'>['meter']>;

const meterColumns = (meter: Meter) => ({
  meter_id: meter.meterId,
  meter_typed: meter.typed,
  meter_reading: meter.reading,
  meter_estimate: flag(meter.estimate),
});

const exposureColumns = (use: NonNullable<CheckedInputOf<'visit.open'>['use']>) => ({
  use_road: flag(use.road),
  use_slope: flag(use.slope),
  use_people_near: flag(use.peopleNear),
  exposure_hours: use.exposureHours,
});

/**
 * True hours only rise. A lower reading on the same meter is a change of meter, a misreading or the wrong machine: the
 * mechanic says which by changing the meter first or marking the reading an estimate.
 */
const refuseFallingHours = (
  { db }: Context,
  machineId: string,
  meter: Meter,
  before: readonly Tables['visit'][],
): void => {
  const meters = metersOf(db, machineId);
  const now = trueHours(meter, meters);
  if (now === null || meter.estimate) return;
  const known = before.map((row) => trueHours(rowToVisit(row).meter, meters)).filter((hours) => hours !== null);
  const highest = Math.max(...known, Number.NEGATIVE_INFINITY);
  if (now < highest) throw new AppError('hours-fall', { before: highest, now }, { field: 'meter' });
};

/** One field after the other is written, perhaps before the window has heard of the first: each says what is its own. */
const merged = (before: Visit['conditions'], now: Readonly<Record<string, string | null>>): Visit['conditions'] =>
  Object.fromEntries(
    Object.entries({ ...before, ...now }).flatMap(([name, words]) => (words === null ? [] : [[name, words]])),
  );

const aboutVisit = (context: Context, writer: RecordWriter, visitId: string) => {
  const { visit, layout } = visitLayout(context, visitId);
  writer.about({ visitId, machineId: visit.machine_id });
  return { visit, layout };
};

export const visitHandlers: Handlers = {
  'visit.get': { read: ({ db }, { id }) => visitRecord(db, id) },
  'visit.open': {
    change: (context, writer, input) => {
      const { db, newId } = context;
      writer.row('machine', input.machineId);
      const layout = newestLayout(db, input.machineId);
      if (!layout) throw new Error(`machine ${input.machineId} has no layout`);
      if (input.meter) refuseFallingHours(context, input.machineId, input.meter, visitsOf(db, input.machineId));
      const id = newId();
      writer.about({ visitId: id, machineId: input.machineId });
      writer.insert('visit', {
        id,
        machine_id: input.machineId,
        layout_id: layout.id,
        person_id: input.personId ?? context.personId(),
        date: input.date,
        complaint: input.complaint,
        // Nothing said of the use: the most usual exposure, visible and changeable on the visit's page.
        ...exposureColumns(input.use ?? { road: false, slope: false, peopleNear: true, exposureHours: 250 }),
        conditions: JSON.stringify(input.conditions ?? {}),
        ...meterColumns(input.meter ?? { meterId: null, typed: '', reading: null, estimate: false }),
        current_part: null,
        opened_at_ms: context.clock(),
        left_at_ms: null,
      });
      const onLayout = rowToLayout(layout).layout;
      const scope =
        input.scope ??
        proposedScope(onLayout).map((path) => ({ path, notExaminedBecause: null, notApplicableBecause: null }));
      scope.forEach(({ path, notExaminedBecause, notApplicableBecause }, position) => {
        writer.insert('scope_item', {
          id: newId(),
          visit_id: id,
          path: placeOn(path, onLayout),
          position,
          not_examined_because: notExaminedBecause,
          not_applicable_because: notApplicableBecause,
        });
      });
      return visitRecord(db, id);
    },
  },
  'visit.change': {
    change: (context, writer, { id, use, meter, conditions, currentPart, leftAtMs, ...plain }) => {
      const { visit, layout } = aboutVisit(context, writer, id);
      if (meter) {
        const others = visitsOf(context.db, visit.machine_id);
        const earlier = others.slice(
          0,
          others.findIndex((row) => row.id === id),
        );
        refuseFallingHours(context, visit.machine_id, meter, earlier);
      }
      writer.update('visit', id, {
        ...plain,
        ...(use ? exposureColumns(use) : {}),
        ...(meter ? meterColumns(meter) : {}),
        conditions: conditions && JSON.stringify(merged(JSON.parse(visit.conditions), conditions)),
        current_part: currentPart && placeOn(currentPart, layout),
        left_at_ms: leftAtMs,
      });
      return rowToVisit(writer.row('visit', id) as never);
    },
  },
  'scope.add': {
    change: (context, writer, { visitId, path }) => {
      const { layout } = aboutVisit(context, writer, visitId);
      const place = placeOn(path, layout);
      const there = scopeOf(context.db, [visitId]);
      const same = there.find((row) => row.path === place);
      if (same) return rowToScopeItem(same);
      const row = {
        id: context.newId(),
        visit_id: visitId,
        path: place,
        position: Math.max(-1, ...there.map(({ position }) => position)) + 1,
        not_examined_because: null,
        not_applicable_because: null,
      };
      writer.insert('scope_item', row);
      return rowToScopeItem(row);
    },
  },
  'scope.change': {
    change: (context, writer, { id, notExaminedBecause, notApplicableBecause }) => {
      aboutVisit(context, writer, String(writer.row('scope_item', id).visit_id));
      writer.update('scope_item', id, {
        not_examined_because: notExaminedBecause,
        not_applicable_because: notApplicableBecause,
      });
      return rowToScopeItem(writer.row('scope_item', id) as never);
    },
  },
  'scope.answerRest': {
    change: (context, writer, { visitId, notExaminedBecause }) => {
      aboutVisit(context, writer, visitId);
      const open = coverItems(visitRecord(context.db, visitId)).filter(
        ({ item, state }) => state === 'not-examined' && item.notExaminedBecause === null,
      );
      for (const { item } of open) writer.update('scope_item', item.id, { not_examined_because: notExaminedBecause });
      return open.map(({ item }) => ({ ...item, notExaminedBecause }));
    },
  },
  'scope.remove': {
    change: (context, writer, { id }) => {
      aboutVisit(context, writer, String(writer.row('scope_item', id).visit_id));
      writer.remove('scope_item', id);
      return null;
    },
  },
};
