import type { Original, Shot } from '../../../shared-lib/model/shot.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

type ShotRow = Tables['shot'] & Pick<Tables['original'], 'width' | 'height' | 'media_type' | 'remark'>;

export const rowToShot = (row: ShotRow): Shot => ({
  id: row.id,
  visitId: row.visit_id,
  digest: row.digest,
  sequence: row.sequence,
  offeredName: row.offered_name,
  caption: row.caption,
  component: row.component,
  seenFrom: row.seen_from,
  taken:
    row.taken_at_ms === null || row.taken_zone_min === null || row.taken_source === null
      ? null
      : { atMs: row.taken_at_ms, zoneOffsetMin: row.taken_zone_min, source: row.taken_source },
  takenLocal: row.taken_local,
  camera: row.camera,
  clockOffsetMs: row.clock_offset_ms,
  takenBy: row.taken_by,
  width: row.width,
  height: row.height,
  mediaType: row.media_type,
  remark: row.remark,
  binned: row.binned === 1,
});

const rowToOriginal = (row: Tables['original']): Original => ({
  digest: row.digest,
  byteLength: row.byte_length,
  mediaType: row.media_type,
  width: row.width,
  height: row.height,
  orientation: row.orientation,
  camera: row.camera,
  remark: row.remark,
});

const shots = build
  .selectFrom('shot')
  .innerJoin('original', 'original.digest', 'shot.digest')
  .selectAll('shot')
  .select(['original.width', 'original.height', 'original.media_type', 'original.remark']);

const shotRows = all((visitId: Param<string>) => shots.where('shot.visit_id', '=', visitId).orderBy('shot.sequence'));

/** A visit's shots in the order of their numbers, binned ones too. */
export const shotsOf = (db: ReadableDb, visitId: string): Shot[] => shotRows(db, visitId).map(rowToShot);

const shotRow = first((id: Param<string>) => shots.where('shot.id', '=', id));

export const shotById = (db: ReadableDb, id: string): Shot | undefined => {
  const row = shotRow(db, id);
  return row && rowToShot(row);
};

const originalRow = first((digest: Param<string>) =>
  build.selectFrom('original').selectAll().where('digest', '=', digest),
);

export const originalByDigest = (db: ReadableDb, digest: string): Original | undefined => {
  const row = originalRow(db, digest);
  return row && rowToOriginal(row);
};

/** Of every photo that the record names. */
export const originalDigests = all(() => build.selectFrom('original').select('digest').orderBy('digest'));

const highestSequence = first((visitId: Param<string>) =>
  build
    .selectFrom('shot')
    .select(({ fn }) => fn.max<number | null>('sequence').as('sequence'))
    .where('visit_id', '=', visitId),
);

export const lastSequence = (db: ReadableDb, visitId: string): number => highestSequence(db, visitId)?.sequence ?? 0;

/** The shot of a visit that shows the same bytes, one that is not in the bin first. */
export const shotOfDigest = first((visitId: Param<string>, digest: Param<string>) =>
  build
    .selectFrom('shot')
    .selectAll()
    .where('visit_id', '=', visitId)
    .where('digest', '=', digest)
    .orderBy('binned')
    .orderBy('sequence')
    .limit(1),
);

/** A visit's shots by one camera; those without a camera's name when it is null. */
export const shotsOfCamera = all((visitId: Param<string>, camera: Param<string | null>) =>
  build
    .selectFrom('shot')
    .selectAll()
    .where('visit_id', '=', visitId)
    .where('camera', 'is', camera)
    .orderBy('sequence'),
);
