/**
 * The photographs of cracks as another camera, hand or program might have left them: `npm run bench -- variations`. Nothing
 * is chosen on them; they show where the tracer breaks that was chosen on the photographs as they are.
 */
import sharp, { type Sharp } from 'sharp';
import { greyOf } from '../../../electron/recorder/measuring/pixels.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';
import { type CrackCase, hasCracks, readCracks } from './crack-set.ts';
import { rowOf, summary } from './evaluate.ts';

interface Variation {
  readonly name: string;
  readonly change: (picture: Sharp, size: { width: number; height: number }) => Sharp;
  /** Where a point of the photograph as it was lies now. */
  readonly to: (point: XY, size: { width: number; height: number }) => XY;
}

const stays = (point: XY): XY => point;
const scaled = (by: number): Pick<Variation, 'change' | 'to'> => ({
  change: (picture, { width, height }) =>
    picture.resize(Math.round(width * by), Math.round(height * by), { fit: 'fill', kernel: 'cubic' }),
  to: ({ x, y }, { width, height }) => ({
    x: ((x + 0.5) * Math.round(width * by)) / width - 0.5,
    y: ((y + 0.5) * Math.round(height * by)) / height - 0.5,
  }),
});

export const variations: readonly Variation[] = [
  { name: 'as they are', change: (picture) => picture, to: stays },
  { name: 'JPEG at 50', change: (picture) => picture.jpeg({ quality: 50 }), to: stays },
  { name: 'JPEG at 25', change: (picture) => picture.jpeg({ quality: 25 }), to: stays },
  {
    name: 'turned by 90 degrees',
    change: (picture) => picture.rotate(90),
    to: ({ x, y }, { height }) => ({ x: height - 1 - y, y: x }),
  },
  { name: 'mirrored', change: (picture) => picture.flop(), to: ({ x, y }, { width }) => ({ x: width - 1 - x, y }) },
  { name: 'brighter', change: (picture) => picture.linear(1.3, 10), to: stays },
  { name: 'darker', change: (picture) => picture.linear(0.5, 0), to: stays },
  { name: 'less contrast', change: (picture) => picture.linear(0.4, 80), to: stays },
  { name: 'gamma 2', change: (picture) => picture.gamma(2, 1), to: stays },
  { name: 'at 0.7 of their size', ...scaled(0.7) },
  { name: 'at 1.5 times their size', ...scaled(1.5) },
  { name: 'at twice their size', ...scaled(2) },
  { name: 'blurred by 1 px', change: (picture) => picture.blur(1), to: stays },
  { name: 'light and dark exchanged', change: (picture) => picture.negate({ alpha: false }), to: stays },
];

export async function varied(
  { path }: CrackCase,
  { change, to }: Variation,
): Promise<{ grey: GreyImage; at: (point: XY) => XY }> {
  const { width, height } = await sharp(path).metadata();
  // Twice through, so that what a JPEG loses is lost before it is read.
  const encoded = await change(sharp(path), { width, height }).toBuffer();
  const { data, info } = await sharp(encoded)
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const channels = info.channels as 1 | 3;
  const picture = { data, width: info.width, height: info.height, channels };
  return { grey: greyOf(picture as Parameters<typeof greyOf>[0]), at: (point) => to(point, { width, height }) };
}

async function evaluate(): Promise<void> {
  if (!hasCracks) {
    console.log('Skipped: the photographs of cracks are not here (../shared/data/cracks).');
    return;
  }
  const cases = await readCracks();
  for (const variation of variations) {
    const rows = [];
    for (const crack of cases) {
      const { grey, at } = await varied(crack, variation);
      rows.push(rowOf(crack.id, grey, crack.rough.map(at), crack.truth.map(at)));
    }
    console.log(summary(variation.name, rows));
  }
}

if (import.meta.main) await evaluate();
