import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { wm } from './wm.ts';

const photos = resolve(import.meta.dirname, '../../../assets/demo/photos');

/** One machine and its open visit, left by the recorder that made them: commands may write there. */
const addVisit = async (): Promise<{ visitId: string; dataFolder: string }> => {
  const { call, dataFolder, recorder } = openTestRecorder();
  await call('app.begin', { with: 'empty' });
  const { visitId } = await addLoader({ call });
  await recorder.close();
  return { visitId, dataFolder };
};

test('import says a line a file, takes in what it can, and ends with 3 where some were refused', async () => {
  const { visitId, dataFolder } = await addVisit();
  const folder = freshFolder();
  const words = join(folder, 'notes.jpg');
  writeFileSync(words, 'no photo at all');
  const hose = join(photos, 'hose-wet.jpg');
  const { code, out } = wm('import', '--data', dataFolder, '--visit', visitId, words, join(folder, 'gone.jpg'), hose);
  const digest = createHash('sha256').update(readFileSync(hose)).digest('hex');
  expect(out.trim().split('\n')).toEqual([
    expect.stringMatching(/^refused {2}notes\.jpg: A text file is not a photo\./),
    expect.stringMatching(/^refused {2}gone\.jpg: The file can't be read: there is none of that name, or no longer\./),
    `accepted ${digest} hose-wet.jpg`,
  ]);
  expect(code).toBe(3);
  expect(wm('import', '--data', dataFolder, '--visit', visitId, join(photos, 'hose-rubbed.jpg')).code).toBe(0);
  expect(wm('import', '--data', dataFolder, '--visit', visitId, words).code).toBe(3);
  const [machine] = JSON.parse(wm('list', '--data', dataFolder, '--json').out);
  expect(machine.machine.serial).toBe('TL-0001');
  expect(wm('check', '--data', dataFolder)).toMatchObject({
    code: 0,
    out: expect.stringMatching(/ 2 photos .* 0 problems/),
  });
});

test('what is refused ends with 1 and a sentence; words it does not know end with 2 and write nothing', () => {
  const folder = join(freshFolder(), 'nothing here');
  expect(wm('list', '--data', folder)).toMatchObject({
    code: 1,
    out: '',
    err: expect.stringMatching(/no longer here/),
  });
  expect(wm('frobnicate')).toMatchObject({ code: 2, err: expect.stringContaining("unknown command 'frobnicate'") });
  expect(wm('list')).toMatchObject({ code: 2, err: expect.stringContaining('--data') });
  expect(wm('--help').code).toBe(0);
});

test('a folder that another program holds may be read, and ends with 4 where it would be written', async () => {
  const { call, dataFolder } = openTestRecorder();
  await call('app.begin', { with: 'empty' });
  expect(wm('list', '--data', dataFolder).code).toBe(0);
  const { code, err } = wm('demo', '--data', dataFolder);
  expect(code).toBe(4);
  expect(err).toContain('tests');
});

test('a report carries its record, and extract brings it back', async () => {
  const { visitId, dataFolder } = await addVisit();
  const pdf = join(freshFolder(), 'report.pdf');
  expect(wm('report', '--data', dataFolder, '--visit', visitId, '--out', pdf).code).toBe(0);
  const { code, out } = wm('extract', pdf);
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ format: 'witness-mark-record/1' });
  expect(wm('extract', join(photos, 'hose-wet.jpg'))).toMatchObject({ code: 1, err: expect.stringMatching(/\.\n$/) });
});

test('trace and measure answer in JSON of the documented form, and refuse a click off the photo', () => {
  const photo = join(photos, 'tower-weld-spring.jpg');
  const traced = JSON.parse(wm('trace', photo, '581,478', '914,508', '--json').out);
  expect(traced).toMatchObject({ image: { width: 1480, height: 1110 }, unsure: false });
  expect(traced.centre.length).toBeGreaterThan(100);
  for (const [x, y] of traced.centre) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
  const refused = wm('trace', photo, '581,478', '9914,508', '--json');
  expect(refused.code).toBe(1);
  expect(JSON.parse(refused.out).error.code).toBe('point-outside-photo');
  const calibration = {
    method: 'known-length',
    lengthMm: 50,
    ends: [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
    ],
  };
  const shapes = [
    {
      shape: 'line',
      points: [
        { x: 0, y: 10 },
        { x: 40, y: 10 },
      ],
    },
  ];
  const measured = JSON.parse(wm('measure', '--json', JSON.stringify({ calibration, shapes })).out);
  // 100 px are 50 mm, so 40 px are 20 mm.
  expect(measured.shapes[0]).toMatchObject({ what: 'length', unit: 'mm', value: 20 });
});
