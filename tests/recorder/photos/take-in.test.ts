import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it, onTestFinished } from 'vitest';
import { Decoder } from '../../../electron/recorder/photos/decoder.ts';
import { takeIn } from '../../../electron/recorder/photos/take-in.ts';
import {
  differenceOf,
  digestOfFile,
  fixture,
  freshDataFolder,
  lopsidedPicture,
  openRoom,
  refusalOf,
} from './photo-room.ts';

const isRoot = process.getuid?.() === 0;

it('keeps the bytes it was given under their own digest, read-only, and leaves the source alone', async () => {
  const room = openRoom();
  const source = fixture('gps.jpg');
  const before = readFileSync(source);
  const { original } = await takeIn(room, source, 'gps.jpg');
  const kept = room.store.originalPath(original.digest);
  expect(kept).toBe(join(room.dataFolder, 'originals', original.digest.slice(0, 2), original.digest));
  expect(readFileSync(kept).equals(before)).toBe(true);
  expect(readFileSync(source).equals(before)).toBe(true);
  expect(digestOfFile(source)).toBe(original.digest);
  expect(original.byteLength).toBe(before.length);
  expect(statSync(kept).mode & 0o777).toBe(0o400);
});

it('takes the same bytes in twice without writing them again', async () => {
  const room = openRoom();
  const first = await takeIn(room, fixture('gps.jpg'), 'a.jpg');
  const path = room.store.originalPath(first.original.digest);
  const written = statSync(path, { bigint: true });
  const second = await takeIn(room, readFileSync(fixture('gps.jpg')), 'b.jpg');
  expect(second.alreadyThere).toBe(true);
  expect(second.original).toEqual(first.original);
  const now = statSync(path, { bigint: true });
  expect([now.ino, now.mtimeNs]).toEqual([written.ino, written.mtimeNs]);
});

it('stands two copies of one photo offered at the same moment', async () => {
  const room = openRoom();
  const both = await Promise.all(['a', 'b'].map((name) => takeIn(room, fixture('date-tz.jpg'), name)));
  expect(both.map(({ alreadyThere }) => alreadyThere).sort()).toEqual([false, true]);
  expect(readdirSync(join(room.dataFolder, 'originals', 'incoming'))).toEqual([]);
});

// The image library's own turning is the judge: ours is a table of our own, applied after shrinking.
it.for([1, 2, 3, 4, 5, 6, 7, 8])(
  'shows a photo with EXIF orientation %i upright, as large as it says',
  async (orientation) => {
    const room = openRoom();
    const jpeg = await sharp(await lopsidedPicture(320, 200))
      .withMetadata({ orientation })
      .jpeg()
      .toBuffer();
    const { original } = await takeIn(room, jpeg, 'turned.jpg');
    const expected = await sharp(jpeg).autoOrient().png().toBuffer({ resolveWithObject: true });
    expect(original.orientation).toBe(orientation);
    expect([original.width, original.height]).toEqual([expected.info.width, expected.info.height]);
    for (const kind of ['thumb', 'screen'] as const) {
      expect(await differenceOf(expected.data, room.store.derivativePath(original.digest, kind))).toBeLessThan(4);
    }
  },
);

it('shows a phone’s HEIC upright once, though container and EXIF both ask for a turn', async () => {
  const room = openRoom();
  const { original, facts } = await takeIn(room, fixture('phone-rotated.heic'), 'phone.heic');
  expect(original).toMatchObject({ width: 3024, height: 4032, orientation: 1, mediaType: 'image/heic' });
  expect(facts).toMatchObject({ takenLocal: '2018-07-31T14:52:07', takenZoneOffsetMin: null });
  // It shows an arrow drawn on paper that points up: its head, above, is wider than its shaft, below.
  const thumb = room.store.derivativePath(original.digest, 'thumb');
  const { data, info } = await sharp(thumb).greyscale().raw().toBuffer({ resolveWithObject: true });
  const widthOfInk = (fromRow: number, toRow: number): number => {
    const columns: number[] = [];
    for (let row = fromRow; row < toRow; row += 1) {
      for (let x = 0; x < info.width; x += 1) if ((data[row * info.width + x] ?? 255) < 70) columns.push(x);
    }
    return Math.max(...columns) - Math.min(...columns);
  };
  const tip = widthOfInk(30, 50);
  const head = widthOfInk(140, 165);
  const shaft = widthOfInk(180, 250);
  expect(head).toBeGreaterThan(shaft * 1.5);
  expect(shaft).toBeGreaterThan(tip * 1.5);
});

it('shows the primary picture of a HEIC that holds several', async () => {
  const room = openRoom();
  const { original } = await takeIn(room, fixture('multi-3.heic'), 'several.heic');
  expect(original.remark).toBe('main picture of 3');
});

it('turns the colours of a wide profile into sRGB', async () => {
  const room = openRoom();
  const { original } = await takeIn(room, fixture('icc-wide.jpg'), 'wide.jpg');
  const expected = await sharp(fixture('icc-wide.jpg')).toColourspace('srgb').png().toBuffer();
  expect(await differenceOf(expected, room.store.derivativePath(original.digest, 'screen'))).toBeLessThan(4);
});

it('lays transparency on white', async () => {
  const room = openRoom();
  const clear = await sharp({ create: { width: 40, height: 30, channels: 4, background: '#00000000' } })
    .png()
    .toBuffer();
  const { original } = await takeIn(room, clear, 'clear.png');
  const { data } = await sharp(room.store.derivativePath(original.digest, 'screen'))
    .raw()
    .toBuffer({ resolveWithObject: true });
  expect(Math.min(...data)).toBeGreaterThan(250);
});

it('reads the camera’s time with its zone, and keeps a time without one as text', async () => {
  const room = openRoom();
  const factsOf = async (name: string) => (await takeIn(room, fixture(name), name)).facts;
  // What the files say: tests/fixtures/photos/manifest.json, notes of each.
  expect(await factsOf('date-tz.jpg')).toEqual({
    takenLocal: '2024-03-31T02:30:00',
    takenZoneOffsetMin: 120,
    camera: 'Bench Camera',
  });
  expect(await factsOf('date-bad.jpg')).toMatchObject({ takenLocal: null, takenZoneOffsetMin: null });
  expect(await factsOf('gps.jpg')).toMatchObject({ takenLocal: '2024-05-06T07:08:09', takenZoneOffsetMin: null });
});

it('remarks that a photo with rotten bytes is damaged, and takes it', async () => {
  const room = openRoom();
  const noise = await sharp({
    create: {
      width: 640,
      height: 480,
      channels: 3,
      background: '#777',
      noise: { type: 'gaussian', mean: 128, sigma: 40 },
    },
  })
    .jpeg({ quality: 90 })
    .toBuffer();
  const at = Math.floor(noise.length * 0.6);
  const rotten = Buffer.concat([noise.subarray(0, at), noise.subarray(at + Math.floor(noise.length * 0.03))]);
  const { original } = await takeIn(room, rotten, 'rotten.jpg');
  expect(original.remark).toBe('file is damaged');
});

it('refuses a photo whose lower half is missing, even with an end marker put behind it', async () => {
  const room = openRoom();
  const cut = Buffer.concat([readFileSync(fixture('cut-25.jpg')), Buffer.from([0xff, 0xd9])]);
  expect(await refusalOf(takeIn(room, cut, 'cut.jpg'))).toEqual({
    code: 'photo-damaged',
    details: { name: 'cut.jpg', why: 'cut-off' },
  });
});

it('refuses more than 120 megapixels from the header, and says how many there are', async () => {
  const room = openRoom();
  const noise = await sharp({
    create: {
      width: 600,
      height: 600,
      channels: 3,
      background: '#777',
      noise: { type: 'gaussian', mean: 128, sigma: 60 },
    },
  })
    .jpeg({ quality: 100 })
    .toBuffer();
  const sof = noise.indexOf(Buffer.from([0xff, 0xc0]));
  const large = Buffer.concat([noise, Buffer.alloc(4_000_000, 1)]);
  large.writeUInt16BE(12_000, sof + 5);
  large.writeUInt16BE(12_000, sof + 7);
  expect(await refusalOf(takeIn(room, large, 'large.jpg'))).toEqual({
    code: 'photo-too-large',
    details: { name: 'large.jpg', megapixels: 144, most: 120 },
  });
  const bomb = Buffer.from(noise);
  bomb.writeUInt16BE(65_000, sof + 5);
  bomb.writeUInt16BE(65_000, sof + 7);
  expect((await refusalOf(takeIn(room, bomb, 'bomb.jpg'))).code).toBe('photo-bomb');
});

/** Puts one more field into a little-endian TIFF's only directory, which moves to the end of the file. */
const withField = (tiff: Buffer, field: { tag: number; type: number; count: number; value: number }): Buffer => {
  const from = tiff.readUInt32LE(4);
  const count = tiff.readUInt16LE(from);
  const entry = Buffer.alloc(12);
  entry.writeUInt16LE(field.tag, 0);
  entry.writeUInt16LE(field.type, 2);
  entry.writeUInt32LE(field.count, 4);
  entry.writeUInt32LE(field.value, 8);
  const entries = Array.from({ length: count }, (_, index) =>
    tiff.subarray(from + 2 + index * 12, from + 14 + index * 12),
  );
  const sorted = [...entries, entry].sort((one, other) => one.readUInt16LE(0) - other.readUInt16LE(0));
  const head = Buffer.from(tiff);
  head.writeUInt32LE(tiff.length, 4);
  const number = Buffer.alloc(2);
  number.writeUInt16LE(count + 1);
  return Buffer.concat([head, number, ...sorted, Buffer.alloc(4)]);
};

// Sources: TIFF 6.0, tag 254 (bit 0: a reduced version of another picture in the file); DNG 1.7, tag 50706 (DNGVersion).
it.for([
  ['whose first picture is a preview', { tag: 254, type: 4, count: 1, value: 1 }],
  ['that says it is a digital negative', { tag: 50706, type: 1, count: 4, value: 0x00000401 }],
] as const)('refuses a camera’s raw file %s', async ([, field]) => {
  const room = openRoom();
  const tiff = await sharp(await lopsidedPicture(64, 48))
    .tiff({ compression: 'none' })
    .toBuffer();
  expect(await refusalOf(takeIn(room, withField(tiff, field), 'raw.dng'))).toEqual({
    code: 'photo-kind-not-read',
    details: { name: 'raw.dng', kind: 'camera-raw' },
  });
  const plain = withField(tiff, { tag: 254, type: 4, count: 1, value: 0 });
  expect((await takeIn(room, plain, 'plain.tif')).original.mediaType).toBe('image/tiff');
});

it('says of a folder, an empty file, a pipe and a missing file what they are', async () => {
  const room = openRoom();
  const folder = freshDataFolder();
  mkdirSync(join(folder, 'album.jpg'));
  writeFileSync(join(folder, 'empty.jpg'), '');
  execFileSync('mkfifo', [join(folder, 'pipe.jpg')]);
  const refusals = await Promise.all(
    ['album.jpg', 'empty.jpg', 'pipe.jpg', 'gone.jpg'].map(
      async (name) => await refusalOf(takeIn(room, join(folder, name), name)),
    ),
  );
  expect(refusals).toEqual([
    { code: 'photo-is-folder', details: { name: 'album.jpg' } },
    { code: 'photo-empty', details: { name: 'empty.jpg' } },
    { code: 'photo-unreadable', details: { name: 'pipe.jpg', reason: 'no-ordinary-file' } },
    { code: 'photo-unreadable', details: { name: 'gone.jpg', reason: 'gone' } },
  ]);
});

it.skipIf(isRoot)('says that a file may not be read (skipped for root, who may read everything)', async () => {
  const room = openRoom();
  const path = join(freshDataFolder(), 'locked.jpg');
  writeFileSync(path, readFileSync(fixture('gps.jpg')));
  chmodSync(path, 0);
  expect(await refusalOf(takeIn(room, path, 'locked.jpg'))).toMatchObject({
    code: 'photo-unreadable',
    details: { reason: 'not-allowed' },
  });
});

/** A file system so small that a photo does not fit. @returns null where this user may not mount one */
const smallDisk = (kibibytes: number): string | null => {
  const folder = freshDataFolder();
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${kibibytes}k`, 'none', folder], { stdio: 'ignore' });
  } catch {
    return null;
  }
  onTestFinished(() => {
    execFileSync('umount', [folder]);
  });
  return folder;
};

it.for([
  ['the original', 200],
  ['its screen picture', 400],
] as const)(
  'says that the disk is full when %s does not fit, and leaves nothing half done',
  async ([, kibibytes], { skip }) => {
    const dataFolder = smallDisk(kibibytes);
    if (dataFolder === null) return skip('this user may not mount a small disk');
    const room = openRoom({}, dataFolder);
    // Its screen picture takes more room than the 50 KB that the larger disk has left.
    expect(await refusalOf(takeIn(room, fixture('Landscape_1.jpg'), 'Landscape_1.jpg'))).toMatchObject({
      code: 'disk-full',
    });
    expect(readdirSync(join(dataFolder, 'originals'))).toEqual(['incoming']);
    expect(readdirSync(join(dataFolder, 'originals', 'incoming'))).toEqual([]);
    expect(readdirSync(join(dataFolder, 'derivatives', 'making'))).toEqual([]);
  },
);

it('clears away what a sudden end left half done, when the next photo comes', async () => {
  const dataFolder = freshDataFolder();
  mkdirSync(join(dataFolder, 'originals', 'incoming'), { recursive: true });
  writeFileSync(join(dataFolder, 'originals', 'incoming', 'torn.part'), 'half a photo');
  await takeIn(openRoom({}, dataFolder), fixture('gps.jpg'), 'gps.jpg');
  expect(readdirSync(join(dataFolder, 'originals', 'incoming'))).toEqual([]);
});

it('does not call a photo damaged when the decoder itself cannot start', async () => {
  const decoder = new Decoder({ childModule: join(import.meta.dirname, 'no-such-child.ts') });
  onTestFinished(() => decoder.close());
  await expect(takeIn({ ...openRoom(), decoder }, fixture('gps.jpg'), 'gps.jpg')).rejects.toThrow('did not start');
});
