import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { onTestFinished } from 'vitest';
import { Decoder, type DecoderLimits } from '../../../electron/recorder/photos/decoder.ts';
import { PhotoStore } from '../../../electron/recorder/photos/store.ts';
import type { PhotoRoom } from '../../../electron/recorder/photos/take-in.ts';
import { AppError, type ErrorCode } from '../../../shared-lib/contract/errors.ts';

export const fixtureFolder = join(import.meta.dirname, '../../fixtures/photos');
export const fixture = (name: string): string => join(fixtureFolder, name);

export const freshDataFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'fotos – žluť '));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

export interface TestRoom extends PhotoRoom {
  readonly dataFolder: string;
}

export const openRoom = (limits: Partial<DecoderLimits> = {}, dataFolder = freshDataFolder()): TestRoom => {
  const decoder = new Decoder(limits);
  onTestFinished(() => decoder.close());
  return { store: new PhotoStore(dataFolder), decoder, dataFolder };
};

/** Every file under a folder, as paths relative to it. */
export const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
export const digestOfFile = (path: string): string => sha256Of(readFileSync(path));

export const refusalOf = async (
  work: Promise<unknown>,
): Promise<{ code: ErrorCode; details: Record<string, unknown> }> => {
  const cause = await work.then(
    () => null,
    (error: unknown) => error,
  );
  if (!(cause instanceof AppError)) throw new Error(`no refusal, but ${String(cause)}`);
  return { code: cause.code, details: { ...cause.details } };
};

/** Root mean square difference of two pictures of the same scene, in grey levels, at the size of the first. */
export const differenceOf = async (one: string | Buffer, other: string | Buffer): Promise<number> => {
  const plain = (picture: string | Buffer, size?: { width: number; height: number }) =>
    sharp(picture)
      .autoOrient()
      .resize(size ? { ...size, fit: 'fill' } : { width: 120 })
      .removeAlpha()
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
  const first = await plain(one);
  const second = await plain(other, { width: first.info.width, height: first.info.height });
  let sum = 0;
  for (const [index, value] of first.data.entries()) sum += (value - (second.data[index] ?? 0)) ** 2;
  return Math.sqrt(sum / first.data.length);
};

/** A picture that no turning or mirroring leaves as it was: a gradient with a dark bar at the upper left. */
export const lopsidedPicture = (width: number, height: number): Promise<Buffer> => {
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const inBar = x < width * 0.5 && y < height * 0.2;
      const at = (y * width + x) * 3;
      pixels[at] = inBar ? 20 : Math.round((255 * x) / width);
      pixels[at + 1] = inBar ? 20 : Math.round((255 * y) / height);
      pixels[at + 2] = inBar ? 20 : 128;
    }
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
};

export const missing = (what: string): string => `skipped: ${what} is not here`;
