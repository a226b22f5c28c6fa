import { readFileSync } from 'node:fs';
import { zoneMinutes } from '../../../shared-lib/model/wall-clock.ts';
import type { Report } from '../../../shared-lib/report/model.ts';
import type { ReportSource } from '../../../shared-lib/report/source.ts';
import type { Context } from '../context.ts';
import { projectFile } from '../own-files.ts';
import { photosOf } from '../photos/photo-service.ts';
import { originalByDigest } from '../photos/queries.ts';
import { people, rowToShop, shopRow } from '../shop/queries.ts';
import { visitRecord } from '../visits/visit-record.ts';

const programVersion = String(
  (JSON.parse(readFileSync(projectFile('package.json'), 'utf8')) as { version: unknown }).version,
);

/** What a visit's report is made from, as it stands now. @throws AppError 'not-found' */
export const reportSource = ({ db, clock }: Pick<Context, 'db' | 'clock'>, visitId: string): ReportSource => {
  const shop = rowToShop(shopRow(db));
  return {
    record: visitRecord(db, visitId),
    shop,
    people: people(db),
    nowMs: clock(),
    zoneOffsetMin: zoneMinutes(shop.timeZone),
    programVersion,
  };
};

/** Every picture the report prints, once. */
const digestsIn = ({ sections }: Report): Set<string> =>
  new Set(
    sections.flatMap((section) => {
      if (section.kind === 'page-one') return section.items.flatMap(({ photo }) => photo?.digest ?? []);
      if (section.kind === 'findings')
        return section.blocks.flatMap(({ photos, compared }) =>
          [...photos, ...compared.flatMap((pair) => pair.photos)].map(({ digest }) => digest),
        );
      return [];
    }),
  );

/** Screen-sized pictures by digest, made again where the cache lost them. One that can't be made leaves its frame. */
export const photoFilesFor = async (
  context: Pick<Context, 'db' | 'services' | 'dataFolder'>,
  report: Report,
): Promise<Map<string, string>> => {
  const photos = photosOf(context);
  const fileOf = async (digest: string): Promise<[digest: string, path: string][]> => {
    const original = originalByDigest(context.db, digest);
    if (!original) return [];
    try {
      return [[digest, await photos.shown(original, 'screen')]];
    } catch (cause) {
      // A report never fails because of a photo; its frame says that it is not there, the log says why.
      process.stderr.write(`photo ${digest} left out of the report: ${String(cause)}\n`);
      return [];
    }
  };
  return new Map((await Promise.all([...digestsIn(report)].map(fileOf))).flat());
};
