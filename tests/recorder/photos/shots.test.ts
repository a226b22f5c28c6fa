import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { locatePhoto } from '../../../electron/recorder/photos/locate-photo.ts';
import type { OfferedFile } from '../../../shared-lib/contract/shots.ts';
import { addLoader, freshFolder, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';
import { digestOfFile, fixture } from './photo-room.ts';

const importEvents = ({ events }: TestRecorder, jobId: string) =>
  events.filter((event) => event.event === 'import').filter((event) => event.jobId === jobId);

const ended = async (test: TestRecorder, jobId: string): Promise<OfferedFile[]> => {
  await expect.poll(() => importEvents(test, jobId).at(-1)?.ended, { timeout: 20_000 }).toMatch(/complete|stopped/);
  return importEvents(test, jobId).flatMap(({ file }) => (file ? [file] : []));
};

let tokens = 0;
const take = async (test: TestRecorder, visitId: string, paths: readonly string[]): Promise<OfferedFile[]> => {
  const named = paths.map((path) => {
    tokens += 1;
    test.recorder.offer({ token: `token-${tokens}`, path, for: 'read' });
    return `token-${tokens}`;
  });
  const { jobId, files } = await test.call('shot.take', { visitId, tokens: named });
  expect(files).toBe(paths.length);
  return await ended(test, jobId);
};

const shotsOf = async ({ call }: TestRecorder, visitId: string) => (await call('visit.get', { id: visitId })).shots;

it('takes photos into a visit, numbered as offered, and tells what became of each', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  const files = await take(test, visitId, ['gps.jpg', 'text.jpg', 'anim.gif', 'gps.jpg'].map(fixture));
  expect(files).toMatchObject([
    { name: 'gps.jpg', accepted: true, digest: digestOfFile(fixture('gps.jpg')), alreadyHere: false },
    { name: 'text.jpg', accepted: false, error: { code: 'photo-not-an-image', details: { found: 'text' } } },
    { name: 'anim.gif', accepted: true, remark: 'first frame of 3' },
    { name: 'gps.jpg', accepted: true, alreadyHere: true },
  ]);
  const shots = await shotsOf(test, visitId);
  expect(shots.map(({ sequence, offeredName }) => [sequence, offeredName])).toEqual([
    [1, 'gps.jpg'],
    [2, 'anim.gif'],
  ]);
  expect(shots[0]).toMatchObject({ camera: 'Bench Camera', takenLocal: '2024-05-06T07:08:09', taken: null });
});

it('lets the current part stick to every shot until it is changed', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  await test.call('visit.change', { id: visitId, currentPart: 'ENG/LNR.3' });
  await take(test, visitId, [fixture('gps.jpg'), fixture('date-tz.jpg')]);
  await test.call('visit.change', { id: visitId, currentPart: null });
  await take(test, visitId, [fixture('palette.png')]);
  const [one, two, three] = await shotsOf(test, visitId);
  expect(one?.component).toBe('ENG/LNR.3');
  expect(two?.component).toBe(one?.component);
  expect(three?.component).toBeNull();
});

it('takes a pasted picture as bytes, and refuses more than 64 megabytes', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  const bytes = new Uint8Array(readFileSync(fixture('palette.png')));
  const { jobId } = await test.call('shot.paste', { visitId, name: 'pasted.png', bytes });
  expect(await ended(test, jobId)).toMatchObject([{ name: 'pasted.png', accepted: true }]);
  await expect(
    test.call('shot.paste', { visitId, name: 'huge', bytes: new Uint8Array(64 * 1024 * 1024 + 1) }),
  ).rejects.toThrow('photo-paste-too-large');
});

it('takes an import back as one step, into the bin, and does it again', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  await take(test, visitId, ['gps.jpg', 'date-tz.jpg', 'palette.png'].map(fixture));
  await test.call('undo.undo', { visitId });
  expect((await shotsOf(test, visitId)).map(({ binned }) => binned)).toEqual([true, true, true]);
  await test.call('undo.redo', { visitId });
  expect((await shotsOf(test, visitId)).map(({ binned }) => binned)).toEqual([false, false, false]);
});

it('brings a binned shot back, with its number, when its photo is offered again', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  await take(test, visitId, [fixture('gps.jpg')]);
  const [shot] = await shotsOf(test, visitId);
  await test.call('shot.bin', { id: shot?.id ?? '' });
  expect(await take(test, visitId, [fixture('gps.jpg')])).toMatchObject([{ shotId: shot?.id, alreadyHere: true }]);
  expect(await shotsOf(test, visitId)).toMatchObject([{ sequence: 1, binned: false }]);
});

it('puts a camera’s clock right for all its shots, those still to come too, and not for typed times', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  await test.call('shop.change', { timeZone: '-05:00' });
  await take(test, visitId, ['gps.jpg', 'palette.png'].map(fixture));
  const [gps] = await shotsOf(test, visitId);
  const hour = 3_600_000;
  const set = () => test.call('camera.setClock', { visitId, camera: 'Bench Camera', offsetMs: -hour });
  await set();
  // Twice gives the same: the offset is laid on what the camera said, not on what was shown.
  await set();
  await take(test, visitId, [fixture('date-tz.jpg')]);
  const shots = await shotsOf(test, visitId);
  // 07:08:09 on the camera's clock, read in the shop's zone, less an hour.
  expect(shots[0]?.taken).toEqual({
    atMs: Date.UTC(2024, 4, 6, 7 + 5 - 1, 8, 9),
    zoneOffsetMin: -300,
    source: 'camera-corrected',
  });
  expect(shots[1]).toMatchObject({ camera: null, taken: null, clockOffsetMs: 0 });
  // 02:30 at +02:00, less an hour.
  expect(shots[2]?.taken).toEqual({
    atMs: Date.UTC(2024, 2, 30, 23, 30),
    zoneOffsetMin: 120,
    source: 'camera-corrected',
  });
  const typed = { atMs: 1_700_000_000_000, zoneOffsetMin: 0, source: 'typed' } as const;
  await test.call('shot.change', { id: gps?.id ?? '', taken: typed });
  await set();
  expect((await shotsOf(test, visitId))[0]?.taken).toEqual(typed);
});

it('changes caption and place, and refuses a place that the machine does not have', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  await take(test, visitId, [fixture('gps.jpg')]);
  const [shot] = await shotsOf(test, visitId);
  const id = shot?.id ?? '';
  const changed = await test.call('shot.change', { id, caption: 'Top of the bore', component: 'ENG/LNR.2' });
  expect(changed).toMatchObject({ caption: 'Top of the bore', component: 'ENG/LNR.2' });
  await expect(test.call('shot.change', { id, component: 'ENG/LNR.9' })).rejects.toThrow('location-unknown');
});

it('stops an import when told to; what was taken in stays', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  const folder = freshFolder();
  const paths = ['Landscape_1.jpg', 'Landscape_6.jpg', 'gps.jpg', 'date-tz.jpg', 'icc-wide.jpg', 'no-eoi.jpg'].map(
    (name) => {
      copyFileSync(fixture(name), join(folder, name));
      test.recorder.offer({ token: name, path: join(folder, name), for: 'read' });
      return name;
    },
  );
  const { jobId } = await test.call('shot.take', { visitId, tokens: paths });
  await test.call('shot.stopTaking', { jobId });
  const files = await ended(test, jobId);
  expect(importEvents(test, jobId).at(-1)?.ended).toBe('stopped');
  expect(await shotsOf(test, visitId)).toHaveLength(files.length);
});

it('uses a token once', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  test.recorder.offer({ token: 'once', path: fixture('gps.jpg'), for: 'read' });
  await test.call('shot.take', { visitId, tokens: ['once'] });
  await expect(test.call('shot.take', { visitId, tokens: ['once'] })).rejects.toThrow('token-spent');
});

it('serves photos by digest and regions by key, and nothing else', async () => {
  const test = openTestRecorder();
  const { visitId } = await addLoader(test);
  const [file] = await take(test, visitId, [fixture('gps.heic')]);
  if (!file?.accepted) throw new Error('not taken in');
  const locate = (url: string) => locatePhoto(test.recorder, url);
  const inStore = (...parts: string[]) => join(test.dataFolder, ...parts);
  const shelf = file.digest.slice(0, 2);
  expect(await locate(`photo://original/${file.digest}`)).toEqual({
    path: inStore('originals', shelf, file.digest),
    mediaType: 'image/heic',
  });
  for (const [what, kind] of [
    ['thumb', 'thumb'],
    ['screen', 'screen'],
    ['whole', 'full'],
  ] as const) {
    expect(await locate(`photo://${what}/${file.digest}`)).toEqual({
      path: inStore('derivatives', kind, shelf, `${file.digest}.jpg`),
      mediaType: 'image/jpeg',
    });
  }
  const { url } = await test.call('shot.region', { id: file.shotId, x: 0, y: 0, width: 50, height: 40, edge: 50 });
  expect((await locate(url))?.path.startsWith(inStore('derivatives', 'region'))).toBe(true);
  for (const wrong of [
    `photo://original/${'0'.repeat(64)}`,
    'photo://original/../record.sqlite',
    `photo://original/${file.digest}/..`,
    `photo://working/${file.digest}`,
    `photo://region/${'0'.repeat(64)}`,
    `file://original/${file.digest}`,
  ]) {
    expect(await locate(wrong)).toBeNull();
  }
});
