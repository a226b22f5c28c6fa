import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { expect, it } from 'vitest';

const folder = new URL('../../../assets/icons/', import.meta.url);

it.each([16, 24, 32, 48, 64, 128, 256, 512])('the icon of %i pixels has that size and layout blue in it', (size) => {
  const { width, height, data } = PNG.sync.read(readFileSync(new URL(`icon-${size}.png`, folder)));
  expect([width, height]).toEqual([size, size]);
  let blue = 0;
  for (let i = 0; i < data.length; i += 4) {
    const near = [0x22, 0x36, 0x8f].every((channel, k) => Math.abs((data[i + k] ?? 0) - channel) < 24);
    if (near && data[i + 3] === 255) blue++;
  }
  // Two painted blocks: a quarter to a half of the face.
  expect(blue / (size * size)).toBeGreaterThan(0.2);
  expect(blue / (size * size)).toBeLessThan(0.6);
});
