import { fromAnnotation, type ReadAnnotation } from '../../../shared-lib/annotations/from-annotation.ts';
import type { ImportedMarks } from '../../../shared-lib/contract/annotations.ts';
import { AppError, type WireError } from '../../../shared-lib/contract/errors.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import type { Context } from '../context.ts';
import { findingById } from '../findings/queries.ts';
import { showFinding } from '../findings/show-finding.ts';
import { canonical } from '../journal/change.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { checkPoints } from '../marks/handlers.ts';
import { calibrationById, markById, marksOf } from '../marks/queries.ts';
import { shotsOf } from '../photos/queries.ts';
import { visitById } from '../visits/queries.ts';

interface ToTakeIn {
  readonly visitId: string;
  readonly shotId: string | undefined;
  readonly annotations: readonly unknown[];
}

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** All of them in one step; one that is refused is named and holds up none of the others. */
export const takeInMarks = (
  context: Context,
  writer: RecordWriter,
  { visitId, shotId, annotations }: ToTakeIn,
): ImportedMarks => {
  const visit = visitById(context.db, visitId);
  if (!visit) throw new AppError('not-found', { record: 'visit', id: visitId });
  const shots = shotsOf(context.db, visitId).filter(({ binned }) => !binned);
  if (shotId !== undefined && !shots.some(({ id }) => id === shotId))
    throw new AppError('not-found', { record: 'shot', id: shotId });
  writer.about({ visitId, machineId: visit.machine_id });
  const there = new Map(marksOf(context.db, visitId).map((mark) => [mark.id, mark]));
  const imported = new Set(
    [...there.values()].flatMap(({ origin, shotId: on }) => (origin.by === 'imported' ? `${on} ${origin.from}` : [])),
  );
  let [added, alreadyHere, changedHere] = [0, 0, 0];
  const refused: { id: string; error: WireError }[] = [];
  for (const annotation of annotations) {
    try {
      const read = fromAnnotation(annotation);
      const shot = shotFor(read, shots, shotId);
      const mark = markOn(context, read, shot, visitId);
      const same = there.get(mark.id);
      const { origin } = mark;
      if (same) {
        if (canonical(same) === canonical(mark)) alreadyHere += 1;
        else changedHere += 1;
      } else if (origin.by === 'imported' && imported.has(`${shot.id} ${origin.from}`)) alreadyHere += 1;
      else {
        checkPoints(mark.shape, mark.points, shot);
        insert(context, writer, mark);
        there.set(mark.id, mark);
        if (origin.by === 'imported') imported.add(`${shot.id} ${origin.from}`);
        added += 1;
      }
    } catch (cause) {
      if (!(cause instanceof AppError)) throw cause;
      refused.push({ id: idOf(annotation), error: cause.toWire() });
    }
  }
  return { added, alreadyHere, changedHere, refused };
};

const idOf = (annotation: unknown): string =>
  typeof annotation === 'object' && annotation !== null && 'id' in annotation
    ? String(annotation.id).slice(0, 300)
    : '';

/** By the digest of the photo's bytes; of two shots of the same bytes the one that the mark names. */
const shotFor = ({ digest, mark }: ReadAnnotation, shots: readonly Shot[], shotId: string | undefined): Shot => {
  const of = digest === null ? shots.filter(({ id }) => id === shotId) : shots.filter((shot) => shot.digest === digest);
  const shot = of.find(({ id }) => id === mark.shotId) ?? of.find(({ id }) => id === shotId) ?? of[0];
  if (!shot) throw new AppError('annotation-of-another-photo', {});
  return shot;
};

/** The mark as it was, bound to what is here: a finding or scale that is gone is named no more. */
const markOn = ({ db, newId }: Context, { mark }: ReadAnnotation, shot: Shot, visitId: string): Mark => {
  const finding = mark.findingId ? findingById(db, mark.findingId) : undefined;
  const calibration = mark.calibrationId ? calibrationById(db, mark.calibrationId) : undefined;
  const elsewhere = markById(db, mark.id);
  const isFree = uuid.test(mark.id) && (elsewhere === undefined || elsewhere.shotId === shot.id);
  return {
    id: isFree ? mark.id : newId(),
    shotId: shot.id,
    findingId: finding?.visitId === visitId ? finding.id : null,
    shape: mark.shape,
    points: mark.points,
    role: mark.role,
    origin: mark.origin,
    calibrationId: calibration?.shotId === shot.id ? calibration.id : null,
    tagAt: mark.tagAt,
    note: mark.note,
  };
};

const insert = (context: Context, writer: RecordWriter, mark: Mark): void => {
  writer.insert('mark', {
    id: mark.id,
    shot_id: mark.shotId,
    finding_id: mark.findingId,
    shape: mark.shape,
    points: JSON.stringify(mark.points),
    role: mark.role,
    origin: JSON.stringify(mark.origin),
    calibration_id: mark.calibrationId,
    tag_x: mark.tagAt?.x ?? null,
    tag_y: mark.tagAt?.y ?? null,
    note: mark.note,
  });
  if (mark.findingId !== null) showFinding(context, writer, mark.findingId, { shotId: mark.shotId });
};
