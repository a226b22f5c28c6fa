import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { greyOf, readUprightPixels } from '../../../electron/recorder/measuring/pixels.ts';
import { findCard } from '../../../shared-lib/calibration/card/find-card.ts';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';

const root = join(import.meta.dirname, '../../..');
const folders = [
  join(root, 'assets/demo/photos'),
  resolve(root, '../shared/data/cracks'),
  resolve(root, '../shared/data/large'),
];

/** Every photograph there is, as it is, turned by a quarter, mirrored, and at two thirds of its size: none holds a card. */
export async function countFalseFinds(): Promise<{ photographs: number; looks: number; found: string[] }> {
  const paths = folders
    .filter((folder) => existsSync(folder))
    .flatMap((folder) => readdirSync(folder).map((name) => join(folder, name)))
    .filter((path) => /\.(jpe?g|png|webp)$/i.test(path));
  const found: string[] = [];
  let looks = 0;
  for (const path of paths) {
    const grey = greyOf(await readUprightPixels(path));
    for (const [how, view] of [
      ['as it is', grey],
      ['turned', turned(grey)],
      ['mirrored', mirrored(grey)],
      ['smaller', smaller(grey)],
    ] as const) {
      looks += 1;
      if (findCard(view) !== null) found.push(`${path}, ${how}`);
    }
  }
  return { photographs: paths.length, looks, found };
}

function drawn(width: number, height: number, at: (x: number, y: number) => number): GreyImage {
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) data[y * width + x] = at(x, y);
  return { width, height, left: 0, top: 0, data };
}

const turned = ({ width, height, data }: GreyImage): GreyImage =>
  drawn(height, width, (x, y) => data[(height - 1 - x) * width + y] as number);

const mirrored = ({ width, height, data }: GreyImage): GreyImage =>
  drawn(width, height, (x, y) => data[y * width + width - 1 - x] as number);

/** Nearest pixels: hard edges are what a finder of corners might take for one. */
const smaller = ({ width, height, data }: GreyImage): GreyImage =>
  drawn(Math.floor((width * 2) / 3), Math.floor((height * 2) / 3), (x, y) => {
    return data[Math.floor(y * 1.5) * width + Math.floor(x * 1.5)] as number;
  });
