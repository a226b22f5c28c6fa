import { AppError } from '../../../shared-lib/contract/errors.ts';
import {
  type ImagePoint,
  type Mark,
  type MarkOrigin,
  type ShapeName,
  shapePointCounts,
} from '../../../shared-lib/model/mark.ts';
import type { Context, Handlers } from '../context.ts';
import { showFinding } from '../findings/show-finding.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { planeFor, refuseStrangePlane } from '../measuring/plane-for.ts';
import { rowToMark, shotFrame } from './queries.ts';

const frameOf = ({ db }: Context, shotId: string) => {
  const frame = shotFrame(db, shotId);
  if (!frame) throw new AppError('not-found', { record: 'shot', id: shotId });
  return frame;
};

/** Half a pixel beyond the outer centres is the picture's own edge; a hand may slip one pixel more. */
const slackPx = 1.5;

export const checkPoints = (
  shape: ShapeName,
  points: readonly ImagePoint[],
  frame: { width: number; height: number },
): void => {
  const { fewest, most } = shapePointCounts[shape];
  if (points.length < fewest || points.length > most) throw new AppError('wrong-point-count', { shape, fewest, most });
  for (const { x, y } of points) {
    const inside = x >= -slackPx && y >= -slackPx && x <= frame.width - 1 + slackPx && y <= frame.height - 1 + slackPx;
    if (!inside) throw new AppError('point-outside-photo', { x, y, width: frame.width, height: frame.height });
  }
};

export const aboutShot = (context: Context, writer: RecordWriter, shotId: string) => {
  const frame = frameOf(context, shotId);
  writer.about({ visitId: frame.visit_id, machineId: frame.machine_id });
  return frame;
};

export const markRow = (writer: RecordWriter, id: string) => rowToMark(writer.row('mark', id) as never);

/** A traced path or a grown outline that a hand has shifted is the program's no more; a carried mark is set anew by it. */
const originAfter = (before: Mark, { origin, points }: { origin?: MarkOrigin | undefined; points?: unknown }) => {
  if (origin) return JSON.stringify(origin);
  if (!points) return undefined;
  if (before.origin.by === 'carried') return JSON.stringify({ ...before.origin, isSetAnew: true } satisfies MarkOrigin);
  return before.origin.by === 'traced' || before.origin.by === 'grown'
    ? JSON.stringify({ by: 'hand' } satisfies MarkOrigin)
    : undefined;
};

export const markHandlers: Handlers = {
  'mark.add': {
    change: (context, writer, input) => {
      const frame = aboutShot(context, writer, input.shotId);
      checkPoints(input.shape, input.points, frame);
      if (input.calibrationId) refuseStrangePlane(context, input.calibrationId, input.shotId);
      const id = context.newId();
      writer.insert('mark', {
        id,
        shot_id: input.shotId,
        finding_id: input.findingId,
        shape: input.shape,
        points: JSON.stringify(input.points),
        role: input.role,
        origin: JSON.stringify(input.origin),
        calibration_id: input.calibrationId === undefined ? planeFor(context, input) : input.calibrationId,
        tag_x: null,
        tag_y: null,
        note: input.note,
      });
      if (input.findingId !== null) showFinding(context, writer, input.findingId, { shotId: input.shotId });
      return markRow(writer, id);
    },
  },
  'mark.change': {
    change: (context, writer, input) => {
      const before = markRow(writer, input.id);
      const frame = aboutShot(context, writer, before.shotId);
      const shape = input.shape ?? before.shape;
      if (input.points || input.shape) checkPoints(shape, input.points ?? before.points, frame);
      if (input.calibrationId) refuseStrangePlane(context, input.calibrationId, before.shotId);
      writer.update('mark', input.id, {
        shape,
        points: input.points && JSON.stringify(input.points),
        ...(input.tagAt === undefined ? {} : { tag_x: input.tagAt?.x ?? null, tag_y: input.tagAt?.y ?? null }),
        note: input.note,
        role: input.role,
        finding_id: input.findingId,
        calibration_id: input.calibrationId,
        origin: originAfter(before, input),
      });
      if (input.findingId) showFinding(context, writer, input.findingId, { shotId: before.shotId });
      return markRow(writer, input.id);
    },
  },
  'mark.remove': {
    change: (context, writer, { id }) => {
      aboutShot(context, writer, markRow(writer, id).shotId);
      writer.remove('mark', id);
      return null;
    },
  },
};
