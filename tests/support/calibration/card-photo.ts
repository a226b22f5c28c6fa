import sharp from 'sharp';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';
import { seeded } from '../../reference/shared-lib/tracing/drawn-surface.ts';
import { type CardView, type DrawnView, drawView } from './card-view.ts';

const bench: GreyImage = { width: 2, height: 2, left: 0, top: 0, data: Float32Array.from([120, 132, 126, 118]) };

/** A photo of a card on an even grey bench, or before a picture, written as a camera would: a JPEG. */
export async function writeCardPhoto(
  path: string,
  view: Pick<CardView, 'face' | 'tiltDegrees'> & Partial<CardView>,
  seed: number,
  behind: GreyImage = bench,
): Promise<DrawnView & { path: string }> {
  const drawn = drawView(
    { photo: { width: 1800, height: 1350 }, fill: 0.45, blurPx: 0.9, noise: 3, shade: 1, barrel: -0.01, ...view },
    behind,
    seeded(seed),
  );
  const { width, height, data } = drawn.image;
  await sharp(Uint8Array.from(data), { raw: { width, height, channels: 1 } })
    .jpeg({ quality: 90 })
    .toFile(path);
  return { ...drawn, path };
}
