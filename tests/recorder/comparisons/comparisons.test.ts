import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { locatePhoto } from '../../../electron/recorder/photos/locate-photo.ts';
import { gapsOf, growthWords } from '../../../shared-lib/comparison/growth-words.ts';
import type { MatchedPair } from '../../../shared-lib/contract/comparisons.ts';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

/** Our own rendered weld, half a year apart and from another side; where its spots lie is exact. */
const photos = resolve(import.meta.dirname, '../../../assets/demo/photos');

const take = async (test: TestRecorder, visitId: string, ...names: string[]) => {
  const named = names.map((name) => {
    test.recorder.offer({ token: `${visitId} ${name}`, path: join(photos, name), for: 'read' });
    return `${visitId} ${name}`;
  });
  const { jobId } = await test.call('shot.take', { visitId, tokens: named });
  const isOver = () =>
    test.events.some((event) => event.event === 'import' && event.jobId === jobId && event.ended !== 'no');
  await expect.poll(isOver, { timeout: 60_000 }).toBe(true);
  return (await test.call('visit.get', { id: visitId })).shots;
};

const place = 'ENG/HD.1';

/** Two visits of one machine, a photo of one weld in each, and a crack found on the first. */
const twoVisits = async () => {
  const test = openTestRecorder();
  const { call } = test;
  const { machineId, visitId } = await addLoader(test);
  const [old, other] = await take(test, visitId, 'tower-weld-autumn.jpg', 'block-deck.jpg');
  const crack = await call('finding.add', { visitId, defect: 'crack', locations: [place], state: 'suspected' });
  const mark = await call('mark.add', {
    shotId: old?.id ?? '',
    findingId: crack.id,
    shape: 'line',
    points: [
      { x: 599.261, y: 451.22 },
      { x: 792.201, y: 507.719 },
    ],
  });
  const next = (await call('visit.open', { machineId, date: '2026-09-01' })).visit.id;
  const [now] = await take(test, next, 'tower-weld-spring.jpg');
  if (!old || !other || !now) throw new Error('a photo was not taken in');
  return { ...test, machineId, visitId, next, crack, mark, old, other, now };
};

/** The weld's ends and marks of the rule as the scene's own camera sees them. */
const known: MatchedPair[] = [
  [599.261, 451.22, 581.31, 478.074],
  [168.832, 931.307, 259.3, 1045.237],
  [1123.876, 1016.229, 1280.65, 896.695],
  [1312.31, 236.321, 1265.879, 93.948],
].map(([x = 0, y = 0, u = 0, v = 0]) => ({ from: { x, y }, to: { x: u, y: v }, by: 'hand' }));

interface Truth {
  readonly camera: {
    readonly fx: number;
    readonly cx: number;
    readonly cy: number;
    readonly rotation: readonly (readonly number[])[];
    readonly translation: readonly number[];
  };
  readonly features: Readonly<Record<string, { readonly mm: readonly number[]; readonly px: readonly number[] }>>;
}
const truthOf = (name: string) => JSON.parse(readFileSync(join(photos, `${name}.truth.json`), 'utf8')) as Truth;

/** Where the scene's own camera sees a point of the plate that the crack lies in (z = 0). */
const seenBy = ({ camera }: Truth, x: number, y: number) => {
  const [u = 0, v = 0, w = 1] = camera.rotation.map(
    ([a = 0, b = 0], k) => a * x + b * y + (camera.translation[k] ?? 0),
  );
  return { x: (camera.fx * u) / w + camera.cx, y: (camera.fx * v) / w + camera.cy };
};

const endsOf = (name: string) => {
  const { features } = truthOf(name);
  return [features['weld toe, start of the crack'], features['end of the crack']];
};

const endToEndMm = (name: string): number => {
  const [a, b] = endsOf(name);
  return Math.hypot((a?.mm[0] ?? 0) - (b?.mm[0] ?? 0), (a?.mm[1] ?? 0) - (b?.mm[1] ?? 0));
};

/** Today's pixels of the ends that the crack had then. */
const sameEnds = () =>
  endsOf('tower-weld-autumn').map((end) => seenBy(truthOf('tower-weld-spring'), end?.mm[0] ?? 0, end?.mm[1] ?? 0));

const calibrate = async (call: TestRecorder['call'], shotId: string, name: string) => {
  const truth = truthOf(name);
  const corners: [number, number][] = [
    [-30, -20],
    [40, -20],
    [40, 25],
    [-30, 25],
    [5, 0],
  ];
  const points = corners.map(([x, y]) => ({ px: seenBy(truth, x, y), mm: { x, y } }));
  const reference = { method: 'known-points', plane: 'side plate', points, clickingPx: 0.5 } as const;
  await call('calibration.add', { shotId, reference });
};

describe('then and now', () => {
  it('offers photos of earlier visits, that of the same finding first', async () => {
    const { call, crack, next, now, old, other } = await twoVisits();
    const before = await call('comparison.earlier', { shotId: now.id });
    expect(before.map(({ because }) => because)).toEqual(['same-machine', 'same-machine']);
    expect(before[0]).toMatchObject({ date: '2026-05-11', isKept: false });
    await call('shot.change', { id: now.id, component: 'ENG' });
    const byPart = await call('comparison.earlier', { shotId: now.id });
    expect(byPart.map(({ shot, because }) => [shot.id, because])).toEqual([
      [old.id, 'same-part'],
      [other.id, 'same-machine'],
    ]);
    const today = await call('finding.carry', { visitId: next, findingId: crack.id });
    await call('finding.showBy', { findingId: today.id, shotId: now.id });
    const byFinding = await call('comparison.earlier', { shotId: now.id });
    expect(byFinding.map(({ shot, because }) => [shot.id, because])).toEqual([
      [old.id, 'same-finding'],
      [other.id, 'same-machine'],
    ]);
    expect(await call('comparison.earlier', { shotId: old.id })).toEqual([]);
  }, 120_000);

  it('suggests matching spots, keeps corrected ones, and takes a keeping back', async () => {
    const { call, next, now, old } = await twoVisits();
    const pair = { shotId: now.id, earlierShotId: old.id };
    const { pairs, found } = await call('comparison.suggest', pair);
    expect(found).toBeGreaterThan(15);
    expect(pairs.length).toBeGreaterThanOrEqual(6);
    expect(pairs.every(({ by }) => by === 'found')).toBe(true);
    await call('comparison.keep', { ...pair, pairs });
    await call('comparison.keep', { ...pair, pairs: known });
    const seen = await call('comparison.see', pair);
    expect(seen.comparison?.pairs).toEqual(known);
    expect(seen.oldMarks).toMatchObject([{ tag: { number: 1, state: 'suspected' }, todayFindingId: null }]);
    expect((await call('visit.get', { id: next })).comparisons).toMatchObject([{ model: 'homography', pairs: known }]);
    await call('undo.undo', { visitId: next });
    expect((await call('comparison.see', pair)).comparison?.pairs).toEqual(pairs);
    const id = seen.comparison?.id ?? '';
    await call('comparison.remove', { id });
    expect((await call('comparison.see', pair)).comparison).toBeNull();
    expect(await call('visit.get', { id: next })).not.toHaveProperty('comparisons');
  }, 120_000);

  it('refuses with a sentence, and what was kept stays', async () => {
    const { call, other, next, now, old } = await twoVisits();
    const pair = { shotId: now.id, earlierShotId: old.id };
    await call('comparison.keep', { ...pair, pairs: known });
    const keep = (pairs: MatchedPair[]) => call('comparison.keep', { ...pair, pairs });
    await expect(keep(known.slice(0, 1))).rejects.toThrow('comparison-too-few-points');
    const line = [0, 1, 2, 3].map((k) => ({ from: { x: 100 + 200 * k, y: 500 }, to: { x: 120 + 200 * k, y: 510 } }));
    await expect(call('comparison.keep', { ...pair, pairs: line })).rejects.toThrow('comparison-points-collinear');
    const spot = { from: { x: 5, y: 5 }, to: { x: 9, y: 9 } };
    await expect(call('comparison.keep', { ...pair, pairs: [spot, spot] })).rejects.toThrow(
      'comparison-points-collinear',
    );
    const swapped = known.map((each, k) => ({ ...each, to: known[[1, 0, 2, 3][k] ?? 0]?.to ?? each.to }));
    await expect(keep(swapped)).rejects.toThrow('comparison-points-crossing');
    const off = known.map((each, k) => (k === 0 ? { ...each, to: { x: 9000, y: 0 } } : each));
    await expect(keep(off)).rejects.toThrow('point-outside-photo');
    await expect(call('comparison.suggest', { shotId: now.id, earlierShotId: other.id })).rejects.toThrow(
      'comparison-nothing-in-common',
    );
    await expect(call('comparison.see', { shotId: old.id, earlierShotId: now.id })).rejects.toThrow(
      'comparison-not-earlier',
    );
    const stranger = await addLoader({ call }, 'TL-0002');
    expect(stranger.visitId).not.toBe(next);
    expect((await call('comparison.see', pair)).comparison?.pairs).toEqual(known);
  }, 120_000);

  it('tells how far a crack has grown once both photos have a scale, and per 100 hours across a change of meter', async () => {
    const { call, machineId, crack, mark, next, now, old, visitId } = await twoVisits();
    const pair = { shotId: now.id, earlierShotId: old.id };
    const [meter] = (await call('visit.get', { id: visitId })).meters;
    await call('visit.change', {
      id: visitId,
      meter: { meterId: meter?.id ?? null, typed: '4180 h', reading: 4180, estimate: false },
    });
    const changed = await call('meter.add', {
      machineId,
      name: 'new meter',
      offsetHours: 4300,
      from: '2026-07-01',
      until: null,
      dead: false,
    });
    await call('visit.change', {
      id: next,
      meter: { meterId: changed.id, typed: '80 h', reading: 80, estimate: false },
    });
    const today = await call('finding.carry', { visitId: next, findingId: crack.id });
    const growthNow = async () => (await call('comparison.see', pair)).growth[0];
    expect(await growthNow()).toMatchObject({ missing: ['no-mark-now', 'no-scale-then'], growth: null });
    // Today's crack ends farther on: 36.4 mm along it, 35.4 mm end to end, where it was 21.9.
    const grown = await call('mark.add', {
      shotId: now.id,
      findingId: today.id,
      shape: 'line',
      points: [
        { x: 581.31, y: 478.074 },
        { x: 914.482, y: 508.415 },
      ],
      origin: { by: 'carried', fromMarkId: mark.id, isSetAnew: true },
    });
    await calibrate(call, old.id, 'tower-weld-autumn');
    expect(await growthNow()).toMatchObject({ missing: ['no-scale-now'] });
    expect(gapsOf((await growthNow()) ?? { missing: [] })).toEqual([
      expect.stringMatching(/^Today's mark has no scale/),
    ]);
    await calibrate(call, now.id, 'tower-weld-spring');
    const told = await growthNow();
    const between = (truth: string) => endToEndMm(truth);
    const growthMm = between('tower-weld-spring') - between('tower-weld-autumn');
    expect(told?.growth).toMatchObject({ state: 'grown' });
    if (told?.growth?.state !== 'grown') throw new Error('not grown');
    expect(Math.abs(told.growth.growth.value - growthMm)).toBeLessThan(told.growth.growth.expanded);
    expect(told.growth.growth.expanded).toBeLessThan(1.5);
    // 4180 h then; 4300 + 80 h now.
    expect(told.growth.per100Hours?.value).toBeCloseTo(told.growth.growth.value / 2, 9);
    expect(growthWords(told, 'metric')).toMatch(/^Grown by 13\.\d ± 0\.\d mm, 6\.\d+ ± 0\.\d+ mm per 100 h\.$/);
    expect((await call('comparison.see', pair)).oldMarks[0]).toMatchObject({
      todayFindingId: today.id,
      takenOverAs: grown.id,
    });
    // The same mark twice: nothing that can be told.
    await call('mark.change', { id: grown.id, points: sameEnds() });
    const unchanged = await growthNow();
    expect(unchanged && growthWords(unchanged, 'metric')).toMatch(/^No change that can be told/);
    // Carried over and left at that, it tells nothing of today; a hand that moves it has set it anew.
    const only = { by: 'carried', fromMarkId: mark.id } as const;
    await call('mark.change', { id: grown.id, origin: only });
    expect(await growthNow()).toMatchObject({ growth: null, missing: ['only-carried'] });
    const moved = await call('mark.change', { id: grown.id, points: sameEnds() });
    expect(moved.origin).toEqual({ ...only, isSetAnew: true });
    expect(await growthNow()).toMatchObject({ growth: { state: 'no-change-told' }, missing: [] });
    // A part fitted there since is another thing.
    await call('part.fit', { machineId, path: place, kind: 'new', fittedVisitId: next, fittedHours: 4380 });
    expect(await growthNow()).toMatchObject({ growth: null, missing: ['other-part'] });
  }, 120_000);

  it('serves the earlier photo as it lies under today’s', async () => {
    const test = await twoVisits();
    const { call, now, old, recorder } = test;
    const pair = { shotId: now.id, earlierShotId: old.id, pairs: known };
    const { url } = await call('comparison.picture', { ...pair, x: 0, y: 0, width: 1480, height: 1110, edge: 740 });
    const found = await locatePhoto(recorder, url);
    const warped = await sharp(found?.path ?? '')
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect([warped.info.width, warped.info.height]).toEqual([740, 555]);
    // The four known spots hold: brightness round each of them is that of the earlier photo where it was.
    const before = await sharp(join(photos, 'tower-weld-autumn.jpg'))
      .greyscale()
      .blur(3)
      .raw()
      .toBuffer({ resolveWithObject: true });
    const after = await sharp(found?.path ?? '')
      .greyscale()
      .blur(1.5)
      .raw()
      .toBuffer({ resolveWithObject: true });
    const at = ({ data, info }: typeof before, x: number, y: number) =>
      data[Math.round(y) * info.width + Math.round(x)] ?? 0;
    for (const { from, to } of known) {
      expect(Math.abs(at(before, from.x, from.y) - at(after, to.x / 2, to.y / 2))).toBeLessThan(14);
    }
    const { url: again } = await call('comparison.picture', {
      ...pair,
      x: 0,
      y: 0,
      width: 1480,
      height: 1110,
      edge: 740,
    });
    expect(again).toBe(url);
    await expect(
      call('comparison.picture', { ...pair, x: 1000, y: 0, width: 1000, height: 10, edge: 100 }),
    ).rejects.toThrow('invalid-input');
  }, 120_000);
});
