import { createHash } from 'node:crypto';
import type { CalibrationInput } from '../../../shared-lib/calibration/input.ts';
import { mapPlane } from '../../../shared-lib/calibration/plane-mapping.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { calibratedPlane, keptCalibration } from '../../../shared-lib/measuring/calibrated-plane.ts';
import { grownArea } from '../../../shared-lib/measuring/grown-mark.ts';
import { straightView } from '../../../shared-lib/measuring/straight-view.ts';
import { tracedPath } from '../../../shared-lib/measuring/traced-mark.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import type { TraceRequest } from '../../../shared-lib/tracing/trace.ts';
import type { Context, Handlers } from '../context.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import { showFinding } from '../findings/show-finding.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { aboutShot, checkPoints, markRow } from '../marks/handlers.ts';
import { calibrationById, calibrationsOn, markById, marksOn } from '../marks/queries.ts';
import { photosOf } from '../photos/photo-service.ts';
import { shotById } from '../photos/queries.ts';
import { measurerOf } from './measurer-of.ts';
import { planeFor } from './plane-for.ts';

const shotOrThrow = ({ db }: Pick<Context, 'db'>, id: string): Shot => {
  const shot = shotById(db, id);
  if (!shot) throw new AppError('not-found', { record: 'shot', id });
  return shot;
};

/** The reference on its photo. The photo's size is the shot's own, whatever was sent. */
const onPhoto = (reference: CalibrationInput, { width, height }: Shot): CalibrationInput => ({
  ...reference,
  plane: reference.plane.trim(),
  photo: { width, height },
});

const planeOf = (id: string, shotId: string, reference: CalibrationInput, component: string | null) =>
  calibratedPlane({
    id,
    shotId,
    plane: reference.plane,
    method: reference.method,
    body: { ...reference, component },
  });

/** Follows the line off the recorder's thread. @throws AppError 'point-outside-photo', 'trace-too-short', a refusal of the picture */
const traceOn = async (context: Context, shot: Shot, request: TraceRequest, pointPx: number) => {
  const path = photosOf(context).store.originalPath(shot.digest);
  const { trace } = await measurerOf(context).run({ kind: 'trace', path, request });
  return tracedPath(trace, request, pointPx);
};

const requestOf = ({
  points,
  scribble,
}: {
  points: TraceRequest['points'];
  scribble?: TraceRequest['points'] | undefined;
}) => (scribble === undefined ? { points } : { points, scribble });

/** Writes what was found on the photo as a new mark. */
const keepFound = (
  context: Context,
  writer: RecordWriter,
  { shotId, findingId, shape, points, origin }: Pick<Mark, 'shotId' | 'findingId' | 'shape' | 'points' | 'origin'>,
): Mark => {
  checkPoints(shape, points, aboutShot(context, writer, shotId));
  const id = context.newId();
  writer.insert('mark', {
    id,
    shot_id: shotId,
    finding_id: findingId,
    shape,
    points: JSON.stringify(points),
    role: 'finding',
    origin: JSON.stringify(origin),
    calibration_id: planeFor(context, { shotId, findingId, role: 'finding' }),
    tag_x: null,
    tag_y: null,
    note: '',
  });
  if (findingId !== null) showFinding(context, writer, findingId, { shotId });
  return markRow(writer, id);
};

export const measuringHandlers: Handlers = {
  'calibration.add': {
    change: (context, writer, { shotId, reference, component }) => {
      const shot = shotOrThrow(context, shotId);
      if (reference.plane.trim() === '')
        throw new AppError('calibration-without-plane', {}, { field: 'reference.plane' });
      const { layout } = visitLayout(context, shot.visitId);
      const part = component === null ? null : placeOn(component, layout);
      const plane = planeOf(context.newId(), shotId, onPhoto(reference, shot), part);
      aboutShot(context, writer, shotId);
      const older = new Set(
        calibrationsOn(context.db, shotId).flatMap((one) => (one.plane === plane.plane ? one.id : [])),
      );
      writer.insert('calibration', {
        id: plane.id,
        shot_id: shotId,
        plane: plane.plane,
        method: plane.method,
        body: JSON.stringify(plane.body),
      });
      for (const mark of marksOn(context.db, shotId)) {
        if (mark.role === 'calibration' || mark.role === 'matching') continue;
        if (mark.calibrationId === null || older.has(mark.calibrationId))
          writer.update('mark', mark.id, { calibration_id: plane.id });
      }
      return plane;
    },
  },
  'calibration.try': {
    read: (context, { shotId, reference }) => {
      const shot = shotOrThrow(context, shotId);
      const { residualsPx, rmsPx, pxPerMm, tiltDegrees } = planeOf('', shotId, onPhoto(reference, shot), null);
      return { residualsPx, rmsPx, pxPerMm, tiltDegrees };
    },
  },
  'mark.trace': {
    outside: async (context, { shotId, findingId, pointPx, ...way }) => {
      const shot = shotOrThrow(context, shotId);
      const { points, origin } = await traceOn(context, shot, requestOf(way), pointPx);
      return context.mutate((writer) =>
        keepFound(context, writer, { shotId, findingId, shape: 'path', points, origin }),
      );
    },
  },
  'mark.retrace': {
    outside: async (context, { id, pointPx, ...way }) => {
      const mark = markById(context.db, id);
      if (!mark) throw new AppError('not-found', { record: 'mark', id });
      if (mark.origin.by !== 'traced') throw new AppError('mark-not-traced', {});
      const { points, origin } = await traceOn(context, shotOrThrow(context, mark.shotId), requestOf(way), pointPx);
      return context.mutate((writer) => {
        // It may have been taken away while the tracer was at work.
        const { shotId } = markRow(writer, id);
        checkPoints('path', points, aboutShot(context, writer, shotId));
        writer.update('mark', id, { points: JSON.stringify(points), origin: JSON.stringify(origin) });
        return markRow(writer, id);
      });
    },
  },
  'mark.grow': {
    outside: async (context, { shotId, findingId, points: seeds }) => {
      const shot = shotOrThrow(context, shotId);
      const path = photosOf(context).store.originalPath(shot.digest);
      const { grown } = await measurerOf(context).run({ kind: 'grow', path, request: { points: seeds } });
      const { points, origin } = grownArea(grown, seeds);
      return context.mutate((writer) =>
        keepFound(context, writer, { shotId, findingId, shape: 'area', points, origin }),
      );
    },
  },
  'photo.straighten': {
    read: async (context, { calibrationId }) => {
      const calibration = calibrationById(context.db, calibrationId);
      if (!calibration) throw new AppError('not-found', { record: 'calibration', id: calibrationId });
      if (calibration.method === 'known-length') throw new AppError('calibration-straight-already', {});
      const shot = shotOrThrow(context, calibration.shotId);
      const view = straightView(mapPlane(keptCalibration(calibration).reference), shot);
      if (!view) throw new AppError('mark-beyond-horizon', {});
      const { width, height, toPhoto, pxPerMm } = view;
      const key = createHash('sha256')
        .update(['straight', shot.digest, width, height, ...toPhoto].join(' '))
        .digest('hex');
      const photos = photosOf(context);
      const path = photos.store.originalPath(shot.digest);
      await photos.drawn(key, (outPath) =>
        measurerOf(context).run({ kind: 'straighten', path, width, height, toPhoto, outPath }),
      );
      return { url: `photo://region/${key}`, width, height, toPhoto, pxPerMm };
    },
  },
};
