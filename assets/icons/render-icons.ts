/** Draws the PNG sizes of the program's icon from its two drawings: `node assets/icons/render-icons.ts`. */
import { join } from 'node:path';
import sharp from 'sharp';

const folder = import.meta.dirname;
for (const size of [16, 24, 32, 48, 64, 128, 256, 512]) {
  const drawing = size === 16 || size === 32 ? 'icon-small.svg' : 'icon.svg';
  const natural = drawing === 'icon.svg' ? 512 : 16;
  await sharp(join(folder, drawing), { density: (72 * Math.max(size, natural)) / natural })
    .resize(size, size)
    .png({ compressionLevel: 9 })
    .toFile(join(folder, `icon-${size}.png`));
}
