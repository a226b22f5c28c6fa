import type { Look } from '../../../shared-lib/growing/planes.ts';
import type { RawPicture } from '../photos/decode/heic.ts';

/** Parts of a picture as the grower sees them: luma of BT.601, and two opponent colours, blocks of pixels averaged. */
export const looksAt =
  ({ data, width: photoWidth, height: photoHeight, channels }: RawPicture): Look =>
  (box, factor) => {
    const left = Math.max(0, box.left);
    const top = Math.max(0, box.top);
    const width = Math.max(0, Math.floor((Math.min(photoWidth - 1, box.right) - left + 1) / factor));
    const height = Math.max(0, Math.floor((Math.min(photoHeight - 1, box.bottom) - top + 1) / factor));
    const light = new Float32Array(width * height);
    const red = new Float32Array(width * height);
    const yellow = new Float32Array(width * height);
    const share = 1 / (factor * factor);
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        let [r, g, b] = [0, 0, 0];
        for (let dy = 0; dy < factor; dy += 1) {
          let from = ((top + y * factor + dy) * photoWidth + left + x * factor) * channels;
          for (let dx = 0; dx < factor; dx += 1, from += channels) {
            r += data[from] as number;
            g += data[from + 1] as number;
            b += data[from + 2] as number;
          }
        }
        const at = y * width + x;
        light[at] = share * (0.299 * r + 0.587 * g + 0.114 * b);
        red[at] = share * (r - g);
        yellow[at] = share * ((r + g) / 2 - b);
      }
    }
    return { width, height, left, top, factor, light, red, yellow };
  };
