import type { OfferedFile } from '../../../shared-lib/contract/shots.ts';
import { zoneMinutes } from '../../../shared-lib/model/wall-clock.ts';
import type { Context } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { shopRow } from '../shop/queries.ts';
import { lastSequence, shotOfDigest, shotsOfCamera } from './queries.ts';
import type { TakenIn } from './take-in.ts';
import { takenByCamera, takenCorrected } from './taken-time.ts';

/** For which visit, and under which part, an import was begun. */
export interface ImportTarget {
  readonly visitId: string;
  readonly machineId: string;
  /** The visit's current part when the photos were offered: one changed meanwhile is meant for the next ones. */
  readonly component: string | null;
}

const addOriginal = (writer: RecordWriter, { original }: TakenIn): void => {
  if (writer.has('original', original.digest)) return;
  writer.insert('original', {
    digest: original.digest,
    byte_length: original.byteLength,
    media_type: original.mediaType,
    width: original.width,
    height: original.height,
    orientation: original.orientation,
    camera: original.camera,
    remark: original.remark,
  });
};

/** A camera whose clock was put right in this visit stays put right for what it still brings. */
const timeColumns = ({ db }: Context, visitId: string, { facts }: TakenIn) => {
  const { takenLocal, takenZoneOffsetMin } = facts;
  const setBefore = shotsOfCamera(db, visitId, facts.camera).findLast((row) => row.taken_source === 'camera-corrected');
  if (!setBefore) return { ...takenByCamera(takenLocal, takenZoneOffsetMin), clock_offset_ms: 0 };
  const offsetMs = setBefore.clock_offset_ms;
  const shopZone = zoneMinutes(shopRow(db).time_zone);
  return { ...takenCorrected(takenLocal, takenZoneOffsetMin, shopZone, offsetMs), clock_offset_ms: offsetMs };
};

const shotAlreadyHere = (writer: RecordWriter, row: Tables['shot']): string => {
  // Offered again after it was binned: the mechanic wants it, with its old number and marks.
  if (row.binned === 1) writer.update('shot', row.id, { binned: 0 });
  return row.id;
};

/** Makes a shot of an original that is safely in the store. The same bytes twice in a visit are one shot. */
export const addShot = (
  context: Context,
  writer: RecordWriter,
  target: ImportTarget,
  taken: TakenIn,
  name: string,
): OfferedFile => {
  const { db, newId } = context;
  const { visitId, machineId, component } = target;
  const { digest, remark } = taken.original;
  writer.about({ visitId, machineId });
  const before = shotOfDigest(db, visitId, digest);
  const outcome = { name, accepted: true, digest, remark } as const;
  if (before) return { ...outcome, shotId: shotAlreadyHere(writer, before), alreadyHere: true };
  const id = newId();
  addOriginal(writer, taken);
  writer.insert('shot', {
    id,
    visit_id: visitId,
    digest,
    sequence: lastSequence(db, visitId) + 1,
    offered_name: name,
    caption: '',
    component,
    seen_from: '',
    taken_local: taken.facts.takenLocal,
    camera: taken.facts.camera,
    taken_by: context.personId(),
    binned: 0,
    ...timeColumns(context, visitId, taken),
  });
  return { ...outcome, shotId: id, alreadyHere: false };
};
