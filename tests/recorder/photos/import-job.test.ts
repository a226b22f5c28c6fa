import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { type ImportPlan, importPhotos, type OfferedItem } from '../../../electron/recorder/photos/import-job.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { filesUnder, fixture, freshDataFolder, openRoom, type TestRoom } from './photo-room.ts';

/** Copies of one photo that differ in their last byte, as files. */
const copies = (count: number, of = fixture('gps.jpg')): OfferedItem[] => {
  const folder = freshDataFolder();
  const bytes = readFileSync(of);
  return Array.from({ length: count }, (_, index) => {
    const source = join(folder, `photo ${index + 1}.jpg`);
    writeFileSync(source, Buffer.concat([bytes, Buffer.from([index])]));
    return { name: `photo ${index + 1}.jpg`, source };
  });
};

const plan = (
  room: TestRoom,
  items: readonly OfferedItem[],
  more: Partial<ImportPlan<string>> = {},
): ImportPlan<string> => ({
  room,
  items,
  signal: new AbortController().signal,
  commit: (_, item) => item.name,
  progress: () => {},
  fault: (cause) => {
    throw cause;
  },
  ...more,
});

it('commits in the order of offering, though a slow file comes first', async () => {
  const room = openRoom();
  const large = await sharp({ create: { width: 6000, height: 4000, channels: 3, background: '#357' } })
    .jpeg()
    .toBuffer();
  const items = [{ name: 'slow.jpg', source: large }, ...copies(5)];
  const committed: string[] = [];
  const done: number[] = [];
  const outcomes = await importPhotos(
    plan(room, items, {
      commit: (taken, item) => {
        committed.push(item.name);
        // Only what is safely in its place may be written into the record.
        expect(existsSync(room.store.originalPath(taken.original.digest))).toBe(true);
        return item.name;
      },
      progress: (_, count) => done.push(count),
    }),
  );
  expect(committed).toEqual(items.map(({ name }) => name));
  expect(outcomes.map(({ name }) => name)).toEqual(committed);
  expect(done).toEqual([1, 2, 3, 4, 5, 6]);
});

it('refuses what it must, each in its place, and takes the others', async () => {
  const room = openRoom();
  const [one, two] = copies(2);
  if (!one || !two) throw new Error('no copies');
  const items = [
    one,
    { name: 'note.txt', source: fixture('text.jpg') },
    { name: 'drawing', source: fixture('script.svg') },
    two,
  ];
  const outcomes = await importPhotos(plan(room, items));
  expect(outcomes.map((outcome) => ('accepted' in outcome ? outcome.accepted : outcome.refused.code))).toEqual([
    'photo 1.jpg',
    'photo-not-an-image',
    'photo-is-drawing',
    'photo 2.jpg',
  ]);
});

it('refuses one file when its commit fails, and takes the others', async () => {
  const room = openRoom();
  const outcomes = await importPhotos(
    plan(room, copies(3), {
      commit: (_, item) => {
        if (item.name === 'photo 2.jpg') throw new AppError('disk-full', {});
        return item.name;
      },
    }),
  );
  expect(outcomes.map((outcome) => 'accepted' in outcome)).toEqual([true, false, true]);
});

it('stops in the middle without leaving anything half done', async () => {
  const room = openRoom();
  const stop = new AbortController();
  const items = copies(30, fixture('Landscape_1.jpg'));
  const outcomes = await importPhotos(
    plan(room, items, { signal: stop.signal, progress: (_, done) => done === 4 && stop.abort() }),
  );
  expect(outcomes.length).toBeGreaterThanOrEqual(4);
  expect(outcomes.length).toBeLessThan(10);
  const { dataFolder } = room;
  expect(readdirSync(join(dataFolder, 'originals', 'incoming'))).toEqual([]);
  expect(readdirSync(join(dataFolder, 'derivatives', 'making'))).toEqual([]);
  for (const file of filesUnder(join(dataFolder, 'originals'))) expect(file).toMatch(/^[0-9a-f]{2}\/[0-9a-f]{64}$/);
  // The same store takes photos again at once.
  copyFileSync(fixture('gps.jpg'), join(dataFolder, 'again.jpg'));
  expect(await importPhotos(plan(room, [{ name: 'again', source: join(dataFolder, 'again.jpg') }]))).toEqual([
    { name: 'again', accepted: 'again' },
  ]);
});

it('starts nothing when it was stopped before it began', async () => {
  const room = openRoom();
  const outcomes = await importPhotos(plan(room, copies(3), { signal: AbortSignal.abort() }));
  expect(outcomes).toEqual([]);
  expect(existsSync(join(room.dataFolder, 'originals'))).toBe(false);
});
