import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { Decoder } from '../../../electron/recorder/photos/decoder.ts';
import { importPhotos } from '../../../electron/recorder/photos/import-job.ts';
import { PhotoStore } from '../../../electron/recorder/photos/store.ts';
import { type Figure, inTurns, printFigure, timed } from '../ratio.ts';

const count = 40;
const rounds = 7;
const large = resolve(import.meta.dirname, '../../../../shared/data/large');

/** Forty photos of 24 megapixels with digests of their own: camera-like ones where they are at hand, else noise. */
const makePhotos = async (folder: string): Promise<string[]> => {
  const cameraLike = existsSync(large) ? readdirSync(large).filter((name) => name.endsWith('.jpg')) : [];
  const sources = await Promise.all(
    cameraLike.map(async (name) => {
      const path = join(large, name);
      const { width = 0, height = 0 } = await sharp(path).metadata();
      return width * height > 20_000_000 ? readFileSync(path) : null;
    }),
  );
  const usable = sources.filter((bytes) => bytes !== null);
  if (usable.length === 0) {
    const noise = { type: 'gaussian', mean: 128, sigma: 30 } as const;
    const make = sharp({ create: { width: 6000, height: 4000, channels: 3, background: '#808080', noise } });
    usable.push(await make.jpeg({ quality: 90 }).toBuffer());
  }
  return Array.from({ length: count }, (_, index) => {
    const path = join(folder, `photo ${index}.jpg`);
    // A byte after the end changes the digest and nothing else.
    writeFileSync(path, Buffer.concat([usable[index % usable.length] ?? Buffer.alloc(0), Buffer.from([index])]));
    return path;
  });
};

/** The floor: two at a time, read, digested, and both pictures from one decode. Nothing kept, nothing synced. */
const bareSharp = async (paths: readonly string[]): Promise<void> => {
  const waiting = [...paths];
  const lane = async (): Promise<void> => {
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
      const bytes = await readFile(path);
      createHash('sha256').update(bytes).digest('hex');
      const screen = sharp(bytes).rotate().resize(2048, 2048, { fit: 'inside' });
      const { data, info } = await screen.raw().toBuffer({ resolveWithObject: true });
      const raw = { width: info.width, height: info.height, channels: info.channels } as const;
      await sharp(data, { raw }).jpeg().toBuffer();
      await sharp(data, { raw }).resize(360, 360, { fit: 'inside' }).jpeg().toBuffer();
    }
  };
  await Promise.all([lane(), lane()]);
};

export const photoFigure = async (): Promise<Figure> => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-photos-'));
  const decoder = new Decoder();
  try {
    const paths = await makePhotos(folder);
    let round = 0;
    const ours = async (): Promise<number> => {
      round += 1;
      const store = new PhotoStore(join(folder, `record ${round}`));
      const items = paths.map((path) => ({ name: path, source: path }));
      return await timed(() =>
        importPhotos({
          room: { store, decoder },
          items,
          signal: new AbortController().signal,
          commit: (taken) => taken.original.digest,
          progress: () => {},
          fault: (cause) => {
            throw cause;
          },
        }),
      );
    };
    const figures = await inTurns(rounds, ours, () => timed(() => bareSharp(paths)));
    return { what: `taking in ${count} photos of 24 megapixels`, ...figures, floor: 'bare sharp', target: 1.3 };
  } finally {
    decoder.close();
    rmSync(folder, { recursive: true, force: true });
  }
};

if (import.meta.main) printFigure(await photoFigure());
