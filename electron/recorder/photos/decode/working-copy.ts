import { stat, writeFile } from 'node:fs/promises';
import sharp from 'sharp';
import { turnUpright, writeJpeg } from './derivatives.ts';
import { readHeader } from './header.ts';
import type { Job } from './job.ts';
import type { Rectangle } from './orientation.ts';
import { readPixels } from './pixels.ts';

/** High enough that a mark set on a region is set on the photo, not on what the copy made of it. */
const wholeQuality = 92;

const readUpright = async (path: string, picture: Extract<Job, { kind: 'full' }>['picture']) => {
  const header = await readHeader(path, picture, (await stat(path)).size);
  const { picture: stored } = await readPixels(path, picture, header, null);
  return await turnUpright(stored, header.orientation);
};

/** A whole upright JPEG of what the window cannot show by itself. */
export const makeFull = async ({ path, picture, outPath }: Extract<Job, { kind: 'full' }>): Promise<void> =>
  await writeJpeg(await readUpright(path, picture), outPath, wholeQuality);

/** An upright pyramid of tiles: a region of any size comes out of it in milliseconds, whatever the original is. */
export const makeWorkingCopy = async ({ path, picture, outPath }: Extract<Job, { kind: 'working' }>): Promise<void> => {
  const upright = await readUpright(path, picture);
  const tiff = await sharp(upright.data, { raw: upright, limitInputPixels: false })
    .tiff({ compression: 'jpeg', quality: wholeQuality, tile: true, tileWidth: 512, tileHeight: 512, pyramid: true })
    .toBuffer();
  await writeFile(outPath, tiff);
};

const scaled = (
  { x, y, width, height }: Rectangle,
  factor: number,
  most: { width: number; height: number },
): Rectangle => {
  const left = Math.min(Math.floor(x * factor), most.width - 1);
  const top = Math.min(Math.floor(y * factor), most.height - 1);
  return {
    x: left,
    y: top,
    width: Math.max(1, Math.min(Math.round((x + width) * factor), most.width) - left),
    height: Math.max(1, Math.min(Math.round((y + height) * factor), most.height) - top),
  };
};

/** Cuts a rectangle of the upright picture out of its working copy, from the smallest level that still has the wanted detail. */
export const cutRegion = async ({
  workingPath,
  rectangle,
  edge,
  outPath,
}: Extract<Job, { kind: 'region' }>): Promise<void> => {
  const base = await sharp(workingPath, { limitInputPixels: false }).metadata();
  const shrink = Math.max(rectangle.width, rectangle.height) / edge;
  const level = Math.min(Math.max(0, Math.floor(Math.log2(shrink))), (base.levels?.length ?? base.pages ?? 1) - 1);
  const at = await sharp(workingPath, { page: level, limitInputPixels: false }).metadata();
  const cut = scaled(rectangle, at.width / base.width, at);
  const jpeg = await sharp(workingPath, { page: level, limitInputPixels: false })
    .extract({ left: cut.x, top: cut.y, width: cut.width, height: cut.height })
    .resize(edge, edge, { fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 88 })
    .toBuffer();
  await writeFile(outPath, jpeg);
};
