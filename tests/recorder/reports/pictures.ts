import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { sha256 } from './sample.ts';

export interface Picture {
  readonly digest: string;
  readonly width: number;
  readonly height: number;
}

/** Stand-in photos on disk, with the map of files that the typesetter is given. */
export interface Pictures {
  readonly folder: string;
  readonly files: Map<string, string>;
  /** A JPEG of that size; `seed` makes it a different one. */
  make(width: number, height: number, seed: number): Promise<Picture>;
  remove(): void;
}

/** Noise compresses badly, as photos do; every seed gives its own bytes, the same in every run. */
function noise(width: number, height: number, seed: number): Buffer {
  const pixels = Buffer.alloc(width * height * 3);
  let state = (seed * 2654435761 + 1) >>> 0;
  for (let index = 0; index < pixels.length; index++) {
    state = (state * 1664525 + 1013904223) >>> 0;
    pixels[index] = 96 + (state >>> 26) + ((index / 3 / width) & 31);
  }
  return pixels;
}

export function openPictures(): Pictures {
  const folder = mkdtempSync(join(tmpdir(), 'report pictures '));
  const files = new Map<string, string>();
  return {
    folder,
    files,
    async make(width, height, seed) {
      const raw = { width, height, channels: 3 as const };
      const jpeg = await sharp(noise(width, height, seed), { raw })
        .jpeg({ quality: 70 })
        .toBuffer();
      const digest = sha256(jpeg);
      const path = join(folder, `${digest}.jpg`);
      writeFileSync(path, jpeg);
      files.set(digest, path);
      return { digest, width, height };
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
