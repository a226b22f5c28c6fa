import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { checkAnnotation } from '../../../shared-lib/annotations/check-annotation.ts';
import { contentName } from '../../../shared-lib/annotations/content-name.ts';
import { freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { pointsInPlane, truthOf, withPhoto, xy } from '../measuring/bench.ts';

const scene = 'head-fire-face';
const crack = truthOf(scene).cracks['seat to injector bore, cylinder 3'];
const ends = [xy(crack?.px[0] ?? []), xy(crack?.px.at(-1) ?? [])];

/** One mark of every shape, one of them traced, measured and told of; one with a tag moved and a note. */
const marked = async () => {
  const bench = await withPhoto(scene, openTestRecorder());
  const { call, visitId, shot } = bench;
  await call('calibration.add', {
    shotId: shot.id,
    reference: { method: 'known-points', plane: 'fire face', points: pointsInPlane(scene) },
  });
  const traced = await call('mark.trace', { shotId: shot.id, points: ends });
  await call('finding.add', { visitId, markId: traced.id, defect: 'crack' });
  const p = { x: 100.25, y: 200.5 };
  const q = { x: 300, y: 220.75 };
  const r = { x: 210.01, y: 400 };
  for (const [shape, points] of [
    ['point', [p]],
    ['line', [p, q]],
    ['arrow', [p, q]],
    ['span', [p, q]],
    ['path', [p, q, r]],
    ['area', [p, q, r]],
  ] as const)
    await call('mark.add', { shotId: shot.id, shape, points: [...points], note: `a "${shape}" <&>` });
  const tagged = await call('mark.add', { shotId: shot.id, shape: 'point', points: [q], role: 'note' });
  await call('mark.change', { id: tagged.id, tagAt: r });
  const file = join(freshFolder(), 'Märks.jsonld');
  const offer = (use: 'read' | 'write') => {
    const token = `${use} ${Math.random()}`;
    bench.recorder.offer({ token, path: file, for: use });
    return token;
  };
  return { ...bench, file, offer, marks: async () => (await call('visit.get', { id: visitId })).marks };
};

it('takes every mark out and brings it back unchanged', async () => {
  const { call, visitId, shot, file, offer, marks } = await marked();
  const before = await marks();
  expect(await call('annotations.export', { visitId, shotId: shot.id, token: offer('write') })).toEqual({
    path: file,
    marks: before.length,
  });
  const document = JSON.parse(readFileSync(file, 'utf8'));
  expect(document).toEqual(await call('annotations.get', { visitId, shotId: shot.id }));
  // Web Annotation Data Model, W3C Recommendation of 23 February 2017: 5.1, 5.2 for the document, 3 and 4 for each of them.
  expect(document).toMatchObject({ '@context': 'http://www.w3.org/ns/anno.jsonld', type: 'AnnotationCollection' });
  expect(document.total).toBe(before.length);
  for (const annotation of document.first.items) expect(checkAnnotation(annotation)).toEqual([]);

  const again = await call('annotations.import', { visitId, token: offer('read') });
  expect(again).toEqual({ added: 0, alreadyHere: before.length, changedHere: 0, refused: [] });
  for (const { id } of before) await call('mark.remove', { id });
  expect(await marks()).toEqual([]);
  const back = await call('annotations.import', { visitId, token: offer('read') });
  expect(back).toEqual({ added: before.length, alreadyHere: 0, changedHere: 0, refused: [] });
  expect(await marks()).toEqual(before);
  // One step, taken back as one.
  await call('undo.undo', { visitId });
  expect(await marks()).toEqual([]);
}, 60_000);

it('leaves what was changed here since as it is', async () => {
  const { call, visitId, offer, marks } = await marked();
  await call('annotations.export', { visitId, token: offer('write') });
  const [first] = await marks();
  await call('mark.change', { id: first?.id ?? '', note: 'looked at again' });
  expect(await call('annotations.import', { visitId, token: offer('read') })).toMatchObject({
    added: 0,
    changedHere: 1,
  });
  expect((await marks())[0]?.note).toBe('looked at again');
}, 60_000);

it('reads marks of other programs, once; and says of each other one why not', async () => {
  const { call, visitId, shot, file, offer, marks } = await marked();
  const before = (await marks()).length;
  const context = 'http://www.w3.org/ns/anno.jsonld';
  const source = contentName(shot.digest);
  const foreign = (id: string, target: unknown) => ({ '@context': context, id, type: 'Annotation', target });
  const selector = (value: string) => ({ type: 'FragmentSelector', value });
  const good = foreign('https://example.org/a1', { source, selector: selector('xywh=pixel:10,20,30,40') });
  const elsewhere = foreign('https://example.org/a2', {
    source: 'https://example.org/photo.jpg',
    selector: selector('xywh=10,20,30,40'),
  });
  const outside = foreign('https://example.org/a3', { source, selector: selector('xywh=pixel:10,20,90000,40') });
  const broken = foreign('https://example.org/a4', []);
  writeFileSync(
    file,
    JSON.stringify({ '@context': context, type: 'AnnotationPage', items: [good, elsewhere, outside, broken] }),
  );
  const done = await call('annotations.import', { visitId, token: offer('read') });
  expect(done.added).toBe(1);
  expect(done.refused.map(({ id, error }) => [id.at(-1), error.code])).toEqual([
    ['2', 'annotation-of-another-photo'],
    ['3', 'point-outside-photo'],
    ['4', 'annotation-malformed'],
  ]);
  expect((await marks()).at(-1)).toMatchObject({
    shape: 'area',
    role: 'note',
    origin: { by: 'imported', from: 'https://example.org/a1' },
    points: [{ x: 9.5, y: 19.5 }, { x: 39.5 }, { y: 59.5 }, { x: 9.5 }],
  });
  const twice = await call('annotations.import', { visitId, shotId: shot.id, token: offer('read') });
  // With the photo named, the one that names its photo another way goes to it.
  expect(twice).toMatchObject({ added: 1, alreadyHere: 1 });
  expect(await marks()).toHaveLength(before + 2);
}, 60_000);

it('refuses a file that holds none', async () => {
  const { call, visitId, file, offer, marks } = await marked();
  const before = await marks();
  for (const text of ['', 'no JSON', '[]', '7', '{"type":"AnnotationCollection","first":"https://example.org/p1"}']) {
    writeFileSync(file, text);
    await expect(call('annotations.import', { visitId, token: offer('read') }), text).rejects.toThrow(
      'annotation-malformed',
    );
  }
  await expect(call('annotations.import', { visitId, token: 'spent' })).rejects.toThrow('token-spent');
  expect(await marks()).toEqual(before);
}, 60_000);
