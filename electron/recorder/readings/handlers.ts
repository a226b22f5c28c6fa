import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { CheckedInputOf } from '../../../shared-lib/contract/operations.ts';
import type { Layout } from '../../../shared-lib/model/layout.ts';
import type { Reading } from '../../../shared-lib/model/reading.ts';
import { sheetOf } from '../../../shared-lib/sheets/index.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { issuedSince } from '../reports/queries.ts';
import { evidenceOfReading } from '../suspicions/queries.ts';
import { proofsOfReading } from '../work/queries.ts';
import { computeReading } from './compute-reading.ts';
import { isMachines, rememberLimit } from './limits.ts';
import {
  dialRows,
  earlierReading,
  instruments,
  proofRows,
  readingsOf,
  rememberedLimits,
  rowToInstrument,
  rowToReading,
} from './queries.ts';
import { samePartOf, seriesUpTo } from './series.ts';

type Filled = Omit<CheckedInputOf<'reading.change'>, 'id' | 'at'>;

/** Fields in the order the sheet asks for them, whatever the order they were typed in. */
const merged = (
  before: Readonly<Record<string, string>>,
  typed: Readonly<Record<string, string>> | undefined,
  order: readonly string[],
): Record<string, string> => {
  const all = Object.entries({ ...before, ...typed }).filter(([, text]) => text.trim() !== '');
  const rank = (field: string) => (order.includes(field) ? order.indexOf(field) : order.length);
  return Object.fromEntries(all.toSorted(([a], [b]) => rank(a) - rank(b)));
};

const setDials = (
  { db, newId }: Context,
  writer: RecordWriter,
  reading: { id: string; visitId: string },
  shotIds: readonly string[],
): void => {
  const wanted = [...new Set(shotIds)];
  const there = dialRows(db, reading.id);
  for (const row of there) if (!wanted.includes(row.shot_id)) writer.remove('reading_shot', row.id);
  for (const shotId of wanted) {
    if (there.some((row) => row.shot_id === shotId)) continue;
    if (writer.row('shot', shotId).visit_id !== reading.visitId) throw new AppError('finding-of-another-visit', {});
    writer.insert('reading_shot', { id: newId(), reading_id: reading.id, shot_id: shotId });
  }
};

const readingAgain = ({ db }: Context, { id, visitId }: { id: string; visitId: string }): Reading => {
  const reading = readingsOf(db, [visitId])
    .get(visitId)
    ?.find((each) => each.id === id);
  if (!reading) throw new AppError('not-found', { record: 'reading', id });
  return reading;
};

/** Writes what was typed, then what the sheet makes of it. */
const writeSheet = (
  context: Context,
  writer: RecordWriter,
  before: Reading,
  around: { visit: Tables['visit']; layout: Layout },
  { inputs, conditions, limits, takenOver, remark, notTakenBecause, instrumentId, shotIds }: Filled,
): Reading => {
  const { visit, layout } = around;
  const sheet = sheetOf(before.sheet);
  if (sheet === null) throw new AppError('not-found', { record: 'sheet', id: before.sheet });
  const kept = { ...before.limits };
  for (const [of, limit] of Object.entries(limits ?? {})) {
    if (limit === null) delete kept[of];
    else kept[of] = limit;
    if (limit === null || isMachines(limit)) rememberLimit(context, writer, visit.machine_id, sheet.id, of, limit);
  }
  if (instrumentId) writer.row('instrument', instrumentId);
  const columns = {
    inputs: JSON.stringify(merged(before.inputs, inputs, Object.keys(sheet.inputs))),
    conditions: JSON.stringify(merged(before.conditions, conditions, Object.keys(sheet.conditions))),
    limits: JSON.stringify(kept),
    taken_over: JSON.stringify(merged(before.takenOver ?? {}, takenOver, Object.keys(sheet.results))),
    remark: remark ?? before.remark,
    not_taken_because: notTakenBecause === undefined ? before.notTakenBecause : notTakenBecause,
    instrument_id: instrumentId === undefined ? before.instrumentId : instrumentId,
    sheet_version: sheet.version,
    place: before.at,
  };
  const row = { ...(writer.row('reading', before.id) as unknown as Tables['reading']), ...columns };
  const computed = computeReading(context.db, rowToReading(row), {
    conditions: JSON.parse(visit.conditions),
    volts: layout.volts,
  });
  writer.update('reading', before.id, { ...columns, results: JSON.stringify(computed?.results ?? []) });
  if (shotIds) setDials(context, writer, before, shotIds);
  return readingAgain(context, before);
};

const emptyRow = (context: Context, visitId: string, sheet: string, place: string): Tables['reading'] => ({
  id: context.newId(),
  visit_id: visitId,
  sheet,
  sheet_version: 0,
  place,
  inputs: '{}',
  conditions: '{}',
  remark: '',
  not_taken_because: null,
  instrument_id: null,
  taken_at_ms: context.clock(),
  results: '[]',
  limits: '{}',
  taken_over: '{}',
});

/** The reading, with its visit and machine named as what the change is about. @throws AppError 'not-found', 'issued' */
const readingAbout = (context: Context, writer: RecordWriter, id: string) => {
  const around = visitLayout(context, String(writer.row('reading', id).visit_id));
  writer.about({ visitId: around.visit.id, machineId: around.visit.machine_id });
  const reading = readingAgain(context, { id, visitId: around.visit.id });
  if (issuedSince(context.db, reading.visitId, reading.takenAtMs)) throw new AppError('issued', {});
  return { ...around, reading };
};

export const readingHandlers: Handlers = {
  'reading.record': {
    change: (context, writer, input) => {
      const { visit, layout } = visitLayout(context, input.visitId);
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      const row: Tables['reading'] = {
        // Version 0: taken down as typed, before any sheet has computed it.
        ...emptyRow(context, visit.id, input.sheet, placeOn(input.at, layout)),
        inputs: JSON.stringify(input.inputs),
        conditions: JSON.stringify(input.conditions),
        remark: input.remark,
        not_taken_because: input.notTakenBecause,
        results: JSON.stringify(input.results),
      };
      writer.insert('reading', row);
      return rowToReading(row);
    },
  },
  'reading.fill': {
    change: (context, writer, { visitId, sheet: name, at, limits, ...filled }) => {
      const around = visitLayout(context, visitId);
      const { visit, layout } = around;
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      const sheet = sheetOf(name);
      if (sheet === null) throw new AppError('not-found', { record: 'sheet', id: name });
      const row = emptyRow(context, visit.id, sheet.id, placeOn(at, layout));
      // A snapshot: what is remembered later does not change what this reading was held against.
      const remembered = rememberedLimits(context.db, visit.machine_id, sheet.id);
      writer.insert('reading', { ...row, limits: JSON.stringify(remembered) });
      const begun = rowToReading({ ...row, limits: JSON.stringify(remembered) });
      return writeSheet(context, writer, begun, around, { ...filled, ...(limits === undefined ? {} : { limits }) });
    },
  },
  'reading.change': {
    change: (context, writer, { id, at, ...filled }) => {
      const { reading, visit, layout } = readingAbout(context, writer, id);
      const moved = at === undefined ? reading : { ...reading, at: placeOn(at, layout) };
      return writeSheet(context, writer, moved, { visit, layout }, filled);
    },
  },
  'reading.remove': {
    change: (context, writer, { id }) => {
      readingAbout(context, writer, id);
      for (const proof of proofRows(context.db, id)) writer.remove('proof', proof.id);
      for (const dial of dialRows(context.db, id)) writer.remove('reading_shot', dial.id);
      for (const borne of evidenceOfReading(context.db, id)) writer.remove('suspicion_evidence', borne.id);
      for (const shown of proofsOfReading(context.db, id)) writer.remove('work_proof', shown.id);
      writer.remove('reading', id);
      return null;
    },
  },
  'reading.previous': {
    read: (context, { visitId, sheet: name, at }) => {
      const { visit, layout } = visitLayout(context, visitId);
      const place = placeOn(at, layout);
      const row = earlierReading(context.db, visit, sheetOf(name)?.id ?? name, place);
      if (!row) return null;
      const { date, ...reading } = row;
      const isOfAnotherPart = !samePartOf(context.db, visit.machine_id)(place, reading.visit_id, visitId);
      return { reading: rowToReading(reading), date, isOfAnotherPart };
    },
  },
  'reading.series': { read: ({ db }, { visitId }) => seriesUpTo(db, visitId) },
  'limit.remembered': {
    read: (context, { visitId, sheet }) =>
      rememberedLimits(context.db, visitLayout(context, visitId).visit.machine_id, sheetOf(sheet)?.id ?? sheet),
  },
  'limit.remember': {
    change: (context, writer, { visitId, sheet: name, of, limit }) => {
      const { visit } = visitLayout(context, visitId);
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      rememberLimit(context, writer, visit.machine_id, sheetOf(name)?.id ?? name, of, limit);
      return null;
    },
  },
  'instrument.list': { read: ({ db }) => instruments(db) },
  'instrument.add': {
    change: (context, writer, { visitId, name, kind = '', resolution, lastCheck = null }) => {
      writer.about({ visitId });
      const row = { id: context.newId(), name, kind, resolution, last_check: lastCheck };
      writer.insert('instrument', row);
      return rowToInstrument(row);
    },
  },
};
