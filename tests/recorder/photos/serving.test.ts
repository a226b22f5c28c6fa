import { existsSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it, onTestFinished } from 'vitest';
import { Decoder } from '../../../electron/recorder/photos/decoder.ts';
import { PhotoService } from '../../../electron/recorder/photos/photo-service.ts';
import { takeIn } from '../../../electron/recorder/photos/take-in.ts';
import { differenceOf, filesUnder, fixture, freshDataFolder, lopsidedPicture } from './photo-room.ts';

const openService = (bounds?: ConstructorParameters<typeof PhotoService>[2]) => {
  const service = new PhotoService(freshDataFolder(), new Decoder(), bounds);
  onTestFinished(() => service.close());
  return service;
};

const taken = async (service: PhotoService, source: string | Buffer) =>
  (await takeIn(service, source, 'photo')).original;

/** 56 megapixels, stored lying on its side. */
const largePhoto = async (): Promise<Buffer> =>
  await sharp(await lopsidedPicture(800, 700))
    .resize(8000, 7000, { kernel: 'cubic' })
    .withMetadata({ orientation: 6 })
    .jpeg({ quality: 80 })
    .toBuffer();

it('makes thumbnail and screen picture again when they are gone or were cut short', async () => {
  const service = openService();
  const original = await taken(service, fixture('orient-bigendian.jpg'));
  const thumb = service.store.derivativePath(original.digest, 'thumb');
  const screen = service.store.derivativePath(original.digest, 'screen');
  const before = readFileSync(screen);
  rmSync(thumb);
  truncateSync(screen, 1000);
  const paths = await Promise.all([service.shown(original, 'screen'), service.shown(original, 'thumb')]);
  expect(paths).toEqual([screen, thumb]);
  expect(existsSync(thumb)).toBe(true);
  expect(readFileSync(screen).equals(before)).toBe(true);
});

it('serves a region of a large photo, upright, as the image library itself cuts it', async () => {
  const service = openService();
  const photo = await largePhoto();
  const original = await taken(service, photo);
  expect([original.width, original.height, original.orientation]).toEqual([7000, 8000, 6]);
  expect(await service.whole(original)).toBeNull();
  const upright = await sharp(photo).autoOrient().toBuffer();
  for (const [rectangle, edge] of [
    [{ x: 0, y: 0, width: 7000, height: 8000 }, 1600],
    [{ x: 3000, y: 3500, width: 1200, height: 900 }, 1200],
    [{ x: 6500, y: 7600, width: 500, height: 400 }, 2000],
  ] as const) {
    const key = await service.region(original, rectangle, edge);
    const path = await service.store.locate(key, 'region');
    if (path === null) throw new Error('no region');
    const { x: left, y: top, width, height } = rectangle;
    const expected = await sharp(upright).extract({ left, top, width, height }).resize({ width: 400 }).png().toBuffer();
    expect(await differenceOf(expected, path)).toBeLessThan(4);
    const about = await sharp(path).metadata();
    // Never larger than what is there.
    expect(Math.max(about.width, about.height)).toBe(Math.min(edge, Math.max(width, height)));
  }
});

it('answers the same region twice from one picture, and refuses one beyond the photo', async () => {
  const service = openService();
  const original = await taken(service, fixture('Landscape_6.jpg'));
  const ask = () => service.region(original, { x: 10, y: 10, width: 300, height: 200 }, 300);
  const keys = await Promise.all([ask(), ask()]);
  expect(keys[0]).toBe(keys[1]);
  expect(filesUnder(service.store.derivativeFolder('region'))).toHaveLength(1);
  await expect(service.region(original, { x: 1700, y: 0, width: 200, height: 100 }, 300)).rejects.toThrow(
    'invalid-input',
  );
});

it('keeps the cache of working copies within its bound', async () => {
  const service = openService({ working: 250_000 });
  for (const name of ['gps.jpg', 'date-tz.jpg', 'orient-bigendian.jpg', 'icc-wide.jpg', 'jpeg-in.tif', 'palette.png']) {
    await service.region(await taken(service, fixture(name)), { x: 0, y: 0, width: 100, height: 100 }, 100);
  }
  const folder = service.store.derivativeFolder('working');
  const bytes = filesUnder(folder).reduce((sum, file) => sum + readFileSync(join(folder, file)).length, 0);
  expect(bytes).toBeLessThanOrEqual(250_000);
  expect(filesUnder(folder).length).toBeGreaterThan(0);
});

it('shows whole what the window can show, and an upright JPEG of what it cannot', async () => {
  const service = openService();
  const jpeg = await taken(service, fixture('orient-bigendian.jpg'));
  expect(await service.whole(jpeg)).toEqual({ path: service.store.originalPath(jpeg.digest), mediaType: 'image/jpeg' });
  for (const name of ['gps.heic', 'jpeg-in.tif', 'orient-exif.webp']) {
    const original = await taken(service, fixture(name));
    const whole = await service.whole(original);
    if (whole === null) throw new Error('nothing to show');
    const about = await sharp(whole.path).metadata();
    expect([about.format, about.width, about.height]).toEqual(['jpeg', original.width, original.height]);
    expect(await differenceOf(service.store.derivativePath(original.digest, 'screen'), whole.path)).toBeLessThan(4);
  }
});

it('locates nothing but digests', async () => {
  const { store } = openService();
  for (const text of [
    '',
    '..',
    '../../etc/passwd',
    'A'.repeat(64),
    `${'a'.repeat(63)}/`,
    'a'.repeat(65),
    'a'.repeat(64),
  ]) {
    expect(await store.locate(text, 'original')).toBeNull();
  }
  expect(() => store.originalPath(`../${'a'.repeat(61)}`)).toThrow('not a digest');
});
