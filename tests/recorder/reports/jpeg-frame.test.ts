import sharp, { type Sharp } from 'sharp';
import { describe, expect, test } from 'vitest';
import { jpegFrame } from '../../../electron/recorder/reports/jpeg-frame.ts';

const noise = (): Sharp =>
  sharp({
    create: {
      width: 320,
      height: 200,
      channels: 3,
      background: '#777',
      noise: { type: 'gaussian', mean: 120, sigma: 40 },
    },
  });

describe('a JPEG of another program is taken over with its size', () => {
  test.each<[string, (picture: Sharp) => Sharp]>([
    ['baseline', (picture) => picture.jpeg()],
    ['progressive', (picture) => picture.jpeg({ progressive: true })],
    ['without thinned colours', (picture) => picture.jpeg({ chromaSubsampling: '4:4:4' })],
    ['grey', (picture) => picture.grayscale().jpeg()],
    [
      'with a profile and camera data',
      (picture) =>
        picture
          .withExif({ IFD0: { Model: 'bench' } })
          .keepMetadata()
          .jpeg(),
    ],
  ])('%s', async (_, encode) => {
    const bytes = await encode(noise()).toBuffer();
    const { width, height } = await sharp(bytes).metadata();
    expect(jpegFrame(bytes)).toEqual({ widthPx: width, heightPx: height });
  });
});

describe('is no picture that a page can take over', () => {
  test('four colours: an archive PDF has no profile for them', async () => {
    expect(jpegFrame(await noise().toColourspace('cmyk').jpeg().toBuffer())).toBeNull();
  });

  test.each(['png', 'webp'] as const)('%s', async (format) => {
    expect(jpegFrame(await noise().toFormat(format).toBuffer())).toBeNull();
  });

  test('any part of one that lacks its end', async () => {
    const bytes = await noise().jpeg({ quality: 50 }).toBuffer();
    const whole = Array.from({ length: bytes.length }, (_, length) => length).filter((length) =>
      jpegFrame(bytes.subarray(0, length)),
    );
    expect(whole).toEqual([]);
  });

  test('one whose head was overwritten', async () => {
    const bytes = await noise().jpeg().toBuffer();
    // Up to its scan: JFIF, tables and frame.
    for (let from = 0; from < bytes.indexOf(Buffer.from([0xff, 0xda])); from += 1) {
      expect(jpegFrame(Buffer.from(bytes).fill(0, from, bytes.indexOf(Buffer.from([0xff, 0xda])) + 2))).toBeNull();
    }
  });
});
