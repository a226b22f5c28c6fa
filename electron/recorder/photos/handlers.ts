import { basename } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import { zoneMinutes } from '../../../shared-lib/model/wall-clock.ts';
import type { Context, Handlers } from '../context.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { shopRow } from '../shop/queries.ts';
import { photosOf } from './photo-service.ts';
import { originalByDigest, shotById, shotsOfCamera } from './queries.ts';
import { beginImport } from './run-import.ts';
import { takenCorrected } from './taken-time.ts';

const mostPastedMegabytes = 64;

const shotOrThrow = ({ db }: Context, id: string): Shot => {
  const shot = shotById(db, id);
  if (!shot) throw new AppError('not-found', { record: 'shot', id });
  return shot;
};

const aboutShot = (context: Context, writer: RecordWriter, id: string) => {
  const shot = shotOrThrow(context, id);
  const { visit, layout } = visitLayout(context, shot.visitId);
  writer.about({ visitId: visit.id, machineId: visit.machine_id });
  return { shot, layout };
};

export const photoHandlers: Handlers = {
  'shot.take': {
    outside: (context, { visitId, tokens }) => {
      visitLayout(context, visitId);
      const paths = tokens.map((token) => context.tokens.spend(token, 'read'));
      return beginImport(
        context,
        visitId,
        paths.map((path) => ({ name: basename(path), source: path })),
      );
    },
  },
  'shot.paste': {
    outside: (context, { visitId, name, bytes }) => {
      if (bytes.byteLength > mostPastedMegabytes * 1024 * 1024) {
        throw new AppError('photo-paste-too-large', { most: mostPastedMegabytes });
      }
      return beginImport(context, visitId, [{ name, source: bytes }]);
    },
  },
  'shot.stopTaking': {
    outside: (context, { jobId }) => {
      // One that has just ended is stopped already.
      photosOf(context).jobs.get(jobId)?.abort();
      return null;
    },
  },
  'shot.change': {
    change: (context, writer, { id, caption, component, seenFrom, takenBy, taken }) => {
      const { layout } = aboutShot(context, writer, id);
      writer.update('shot', id, {
        caption,
        component: component && placeOn(component, layout),
        seen_from: seenFrom,
        taken_by: takenBy,
        ...(taken === undefined
          ? {}
          : {
              taken_at_ms: taken?.atMs ?? null,
              taken_zone_min: taken?.zoneOffsetMin ?? null,
              taken_source: taken?.source ?? null,
            }),
      });
      return shotOrThrow(context, id);
    },
  },
  'shot.bin': {
    change: (context, writer, { id }) => {
      aboutShot(context, writer, id);
      writer.update('shot', id, { binned: 1 });
      return null;
    },
  },
  'shot.restore': {
    change: (context, writer, { id }) => {
      aboutShot(context, writer, id);
      writer.update('shot', id, { binned: 0 });
      return null;
    },
  },
  'camera.setClock': {
    change: (context, writer, { visitId, camera, offsetMs }) => {
      const { visit } = visitLayout(context, visitId);
      writer.about({ visitId, machineId: visit.machine_id });
      const shopZone = zoneMinutes(shopRow(context.db).time_zone);
      const rows = shotsOfCamera(context.db, visitId, camera);
      for (const row of rows) {
        const time =
          // What the mechanic typed is not the camera's to shift.
          row.taken_source === 'typed' ? {} : takenCorrected(row.taken_local, row.taken_zone_min, shopZone, offsetMs);
        writer.update('shot', row.id, { clock_offset_ms: offsetMs, ...time });
      }
      return rows.map(({ id }) => shotOrThrow(context, id));
    },
  },
  'shot.region': {
    read: async (context, { id, x, y, width, height, edge }) => {
      const shot = shotOrThrow(context, id);
      const original = originalByDigest(context.db, shot.digest);
      if (!original) throw new Error(`shot ${id} has no original`);
      const key = await photosOf(context).region(original, { x, y, width, height }, edge);
      return { url: `photo://region/${key}` };
    },
  },
};
