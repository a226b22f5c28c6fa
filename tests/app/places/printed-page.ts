import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator } from '@playwright/test';
import sharp from 'sharp';

const widthPx = 140;

/** A page's own shades at a small size, so that how a letter's edge is drawn matters little. */
const shadesOf = async (picture: Buffer | string, heightPx: number): Promise<Buffer> =>
  await sharp(picture).removeAlpha().resize(widthPx, heightPx, { fit: 'fill' }).raw().toBuffer();

/**
 * How far a page in the window is from the same page of a PDF, as a program that shares no code with the writer draws it.
 *
 * @returns  mean difference of their shades, 0–255
 */
export async function differenceFromPrint(leaf: Locator, pdf: string, page: number): Promise<number> {
  const printed = join(mkdtempSync(join(tmpdir(), 'printed ')), 'page');
  execFileSync('pdftoppm', ['-r', '72', '-png', '-singlefile', '-f', String(page), '-l', String(page), pdf, printed]);
  const { width = 1, height = 1 } = await sharp(`${printed}.png`).metadata();
  const heightPx = Math.round((height / width) * widthPx);
  // Not a picture of the screen: a page may be longer than the window.
  const drawn = await leaf.evaluate(async (image: HTMLImageElement) => {
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('no canvas');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(image, 0, 0);
    return canvas.toDataURL('image/png').slice('data:image/png;base64,'.length);
  });
  const [shown, print] = await Promise.all([
    shadesOf(Buffer.from(drawn, 'base64'), heightPx),
    shadesOf(`${printed}.png`, heightPx),
  ]);
  let sum = 0;
  for (const [index, shade] of shown.entries()) sum += Math.abs(shade - (print[index] ?? 0));
  return sum / shown.length;
}
