import { speakLocation } from '../../../shared-lib/parts/speak-location.ts';
import { titleOf } from '../../../shared-lib/ranking/title.ts';
import type { ReadableDb } from '../database/connection.ts';
import { findingById } from '../findings/queries.ts';
import { layoutById, machineById, ownerNow, rowToLayout } from '../machines/queries.ts';
import { visitById } from '../visits/queries.ts';
import { findingIds, machineIds, type SearchDocument, visitIds } from './queries.ts';

const joined = (words: readonly (string | null | undefined)[]): string => words.filter((word) => word).join(' ');

export const machineDocument = (db: ReadableDb, machineId: string): SearchDocument | null => {
  const row = machineById(db, machineId);
  if (!row) return null;
  const owner = ownerNow(db, machineId);
  return {
    record: machineId,
    kind: 'machine',
    machine_id: machineId,
    visit_id: null,
    finding_id: null,
    words: joined([row.kind, row.year, row.serial, row.engine_serial, row.bay, row.note, owner?.name, owner?.place]),
    serial: joined([row.serial, row.engine_serial]),
  };
};

export const visitDocument = (db: ReadableDb, visitId: string): SearchDocument | null => {
  const row = visitById(db, visitId);
  if (!row) return null;
  return {
    record: visitId,
    kind: 'visit',
    machine_id: row.machine_id,
    visit_id: visitId,
    finding_id: null,
    words: joined([row.complaint, row.date]),
    serial: '',
  };
};

/** A finding by its title, its own words and its places as they are spoken; none for one in the bin. */
export const findingDocument = (db: ReadableDb, findingId: string): SearchDocument | null => {
  const finding = findingById(db, findingId);
  const visit = finding && visitById(db, finding.visitId);
  const layoutRow = visit && layoutById(db, visit.layout_id);
  if (!finding || !visit || !layoutRow || finding.binned) return null;
  const { layout } = rowToLayout(layoutRow);
  const places = finding.locations.map((place) => speakLocation(place, layout));
  return {
    record: findingId,
    kind: 'finding',
    machine_id: visit.machine_id,
    visit_id: visit.id,
    finding_id: findingId,
    words: joined([titleOf(finding, layout), finding.words, ...places, finding.actionWords]),
    serial: '',
  };
};

/** Every document there is, for a folder that was written before there was a search. */
export function* allDocuments(db: ReadableDb): Generator<SearchDocument> {
  for (const [ids, make] of [
    [machineIds, machineDocument],
    [visitIds, visitDocument],
    [findingIds, findingDocument],
  ] as const) {
    for (const { id } of ids(db)) {
      const document = make(db, id);
      if (document) yield document;
    }
  }
}
