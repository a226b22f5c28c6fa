import { readFile, stat } from 'node:fs/promises';
import { annotationsIn, collectionOf, type MarkCollection } from '../../../shared-lib/annotations/collection.ts';
import { toAnnotation } from '../../../shared-lib/annotations/to-annotation.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { titleOf } from '../../../shared-lib/ranking/title.ts';
import type { Context, Handlers } from '../context.ts';
import { writeWholeFile } from '../reports/write-file.ts';
import { visitRecord } from '../visits/visit-record.ts';
import { takeInMarks } from './take-in-marks.ts';

const mostMegabytes = 64;

const collect = ({ db }: Pick<Context, 'db'>, visitId: string, shotId: string | undefined): MarkCollection => {
  const { shots, marks, findings, layout, visit } = visitRecord(db, visitId);
  const chosen = shots.filter(({ id, binned }) => (shotId === undefined ? !binned : id === shotId));
  const [only] = chosen;
  if (shotId !== undefined && !only) throw new AppError('not-found', { record: 'shot', id: shotId });
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  const items = chosen.flatMap((shot) =>
    marks.flatMap((mark) => {
      if (mark.shotId !== shot.id) return [];
      const finding = mark.findingId === null ? undefined : byId.get(mark.findingId);
      return toAnnotation(mark, shot, finding && titleOf(finding, layout.layout));
    }),
  );
  const label =
    shotId === undefined || !only ? `Marks of the visit of ${visit.date}` : `Marks of photo ${only.sequence}`;
  return collectionOf(shotId ?? visitId, label, items);
};

/** @throws AppError 'file-unreadable', 'annotation-malformed' */
const readDocument = async (path: string): Promise<unknown> => {
  const text = await (async () => {
    try {
      const { size } = await stat(path);
      if (size > mostMegabytes * 1_000_000)
        throw new AppError('annotation-malformed', { clause: '3.1', reason: `it is larger than ${mostMegabytes} MB` });
      return await readFile(path, 'utf8');
    } catch (cause) {
      if (cause instanceof AppError) throw cause;
      const { code } = cause as { code?: unknown };
      throw new AppError('file-unreadable', { path, reason: String(code ?? cause) }, { cause });
    }
  })();
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (cause) {
    throw new AppError('annotation-malformed', { clause: '3.1', reason: 'it is no JSON' }, { cause });
  }
};

export const annotationHandlers: Handlers = {
  'annotations.get': { read: (context, { visitId, shotId }) => collect(context, visitId, shotId) },
  'annotations.export': {
    read: async (context, { visitId, shotId, token }) => {
      const path = context.tokens.spend(token, 'write');
      const collection = collect(context, visitId, shotId);
      await writeWholeFile(path, Buffer.from(`${JSON.stringify(collection, null, 2)}\n`));
      return { path, marks: collection.total };
    },
  },
  'annotations.import': {
    outside: async (context, { visitId, shotId, token }) => {
      const annotations = annotationsIn(await readDocument(context.tokens.spend(token, 'read')));
      return context.mutate((writer) => takeInMarks(context, writer, { visitId, shotId, annotations }));
    },
  },
};
