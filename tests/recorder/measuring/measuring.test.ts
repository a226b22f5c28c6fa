import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { locatePhoto } from '../../../electron/recorder/photos/locate-photo.ts';
import { invert, project } from '../../../shared-lib/calibration/homography.ts';
import type { InputOf } from '../../../shared-lib/contract/operations.ts';
import { pictureOf, pointsInPlane, truthOf, withPhoto, xy } from './bench.ts';

const scene = 'head-fire-face';
const crackName = 'seat to injector bore, cylinder 3';
const crack = truthOf(scene).cracks[crackName];
const [from, to] = [xy(crack?.px[0] ?? []), xy(crack?.px.at(-1) ?? [])];
const trueMm = crack?.lengthMm ?? 0;

type Reference = InputOf<'calibration.add'>['reference'];
const fourPoints: Reference = { method: 'known-points', plane: 'fire face', points: pointsInPlane(scene) };

describe('a crack on the fire face', () => {
  it('is traced and has its true length within the stated uncertainty; the finding takes over that number', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    const mark = await call('mark.trace', { shotId: shot.id, points: [from, to] });
    expect(mark).toMatchObject({ shape: 'path', calibrationId: null, origin: { by: 'traced' } });
    const before = await call('visit.get', { id: visitId });
    expect(before.sizes).toMatchObject([{ markId: mark.id, size: { unit: 'px', expanded: null } }]);

    const plane = await call('calibration.add', { shotId: shot.id, reference: fourPoints, component: 'ENG/HD.1' });
    const { marks, sizes, calibrations } = await call('visit.get', { id: visitId });
    expect(marks[0]?.calibrationId).toBe(plane.id);
    expect(calibrations).toHaveLength(1);
    const size = sizes[0]?.size;
    expect(size?.unit).toBe('mm');
    // The scene's own truth, from its description.
    expect(Math.abs((size?.value ?? 0) - trueMm)).toBeLessThan(size?.expanded ?? 0);
    expect(size?.expanded).toBeLessThan(2);
    expect(sizes[0]?.width?.value).toBeGreaterThan(0);

    const finding = await call('finding.add', { visitId, markId: mark.id, defect: 'crack' });
    const changed = await call('finding.change', { id: finding.id, quantities: { length: { fromMark: mark.id } } });
    expect(changed.quantities.length).toMatchObject({ typed: size?.text, origin: 'photo', how: 'photo 1, fire face' });
    expect(changed.quantities.length?.uncertainty).toBeCloseTo(size?.expanded ?? 0, 0);
    expect(Math.abs((changed.quantities.length?.value ?? 0) - trueMm)).toBeLessThan(1);
  }, 60_000);

  it('keeps how the trace was made, and can be led another way', async () => {
    const { call, shot } = await withPhoto(scene);
    const mark = await call('mark.trace', { shotId: shot.id, points: [from, to], pointPx: 2 });
    if (mark.origin.by !== 'traced') throw new Error('not traced');
    expect(mark.origin.parameters).toMatchObject({ points: [{}, {}], pointPx: 2 });
    expect(mark.origin.reading?.widthsPx).toHaveLength(mark.points.length);
    const middle = mark.points[Math.floor(mark.points.length / 2)];
    if (!middle) throw new Error('no middle');
    const again = await call('mark.retrace', { id: mark.id, points: [from, middle, to] });
    expect(again.origin).toMatchObject({ by: 'traced', parameters: { points: [{}, {}, {}] } });
    // A hand that shifts its points makes it a drawn path.
    const shifted = await call('mark.change', { id: mark.id, points: mark.points.slice(0, 4) });
    expect(shifted.origin).toEqual({ by: 'hand' });
    await expect(call('mark.retrace', { id: mark.id, points: [from, to] })).rejects.toThrow('mark-not-traced');
  }, 60_000);

  it('is taken back and brought back by undo, its scale too', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    const mark = await call('mark.trace', { shotId: shot.id, points: [from, to] });
    const plane = await call('calibration.add', { shotId: shot.id, reference: fourPoints });
    await call('undo.undo', { visitId });
    const without = await call('visit.get', { id: visitId });
    expect(without.calibrations).toEqual([]);
    expect(without.marks[0]?.calibrationId).toBeNull();
    await call('undo.redo', { visitId });
    const again = await call('visit.get', { id: visitId });
    expect(again.marks).toMatchObject([{ id: mark.id, calibrationId: plane.id }]);
    await call('undo.undo', { visitId });
    await call('undo.undo', { visitId });
    expect((await call('visit.get', { id: visitId })).marks).toEqual([]);
  }, 60_000);
});

describe('a scale', () => {
  it('that is none is refused with its sentence, and the last good one stays', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    await call('calibration.add', { shotId: shot.id, reference: fourPoints });
    const spot = { x: 100, y: 100 };
    const line = [0, 1, 2, 3].map((k) => ({ px: { x: 100 + 50 * k, y: 100 }, mm: { x: 10 * k, y: 0 } }));
    const known = fourPoints.method === 'known-points' ? fourPoints.points : [];
    const [a, b, c, d] = [known[0], known[1], known.at(-2), known.at(-1)];
    if (!a || !b || !c || !d) throw new Error('four points are needed');
    const zigzag = [0, 1, 2, 3, 4, 5].map((k) => ({ x: 100 + 40 * k, y: k % 2 === 0 ? 100 : 400 }));
    const plane = 'fire face';
    const refused: [string, Reference][] = [
      ['calibration-zero-length', { method: 'known-length', plane, ends: [spot, spot], lengthMm: 50 }],
      ['calibration-zero-length', { method: 'known-length', plane, ends: [spot, { x: 300, y: 100 }], lengthMm: 0 }],
      ['calibration-points-collinear', { method: 'known-points', plane, points: line }],
      [
        'calibration-points-crossing',
        { method: 'known-points', plane, points: [a, { px: c.px, mm: b.mm }, { px: b.px, mm: c.mm }, d] },
      ],
      ['calibration-too-few-points', { method: 'known-points', plane, points: [a, b, c] }],
      ['calibration-not-ellipse', { method: 'known-circle', plane, rim: zigzag, diameterMm: 20 }],
      ['point-outside-photo', { method: 'known-length', plane, ends: [spot, { x: 9000, y: 0 }], lengthMm: 5 }],
      ['calibration-without-plane', { method: 'known-length', plane: ' ', ends: [spot, { x: 9, y: 0 }], lengthMm: 5 }],
      ['invalid-input', { method: 'known-length', plane, ends: [spot, { x: 9, y: 0 }], lengthMm: 1e308 }],
    ];
    for (const [code, reference] of refused) {
      await expect(call('calibration.add', { shotId: shot.id, reference }), code).rejects.toThrow(code);
    }
    expect((await call('visit.get', { id: visitId })).calibrations).toHaveLength(1);
  }, 60_000);

  it('that is newer takes the marks of the older one of its plane, and leaves those of another', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    const first = await call('calibration.add', { shotId: shot.id, reference: fourPoints });
    const line = [from, to];
    const onFace = await call('mark.add', { shotId: shot.id, shape: 'line', points: line });
    const rule: Reference = {
      method: 'known-length',
      plane: 'rule',
      ends: [
        { x: 45.5, y: 1162.7 },
        { x: 761.6, y: 1136.9 },
      ],
      lengthMm: 100,
    };
    const other = await call('calibration.add', { shotId: shot.id, reference: rule });
    const onRule = await call('mark.add', { shotId: shot.id, shape: 'line', points: line });
    expect([onFace.calibrationId, onRule.calibrationId]).toEqual([first.id, other.id]);
    const better = await call('calibration.add', { shotId: shot.id, reference: { ...fourPoints, clickingPx: 0.5 } });
    const { marks } = await call('visit.get', { id: visitId });
    expect(new Map(marks.map((mark) => [mark.id, mark.calibrationId]))).toEqual(
      new Map([
        [onFace.id, better.id],
        [onRule.id, other.id],
      ]),
    );
    const none = await call('mark.change', { id: onRule.id, calibrationId: null });
    expect(none.calibrationId).toBeNull();
    await expect(call('mark.change', { id: onRule.id, calibrationId: 'nothing' })).rejects.toThrow('not-found');
  }, 60_000);

  it('of another photo is refused', async () => {
    const one = await withPhoto(scene);
    const { call, visitId } = one;
    one.recorder.offer({
      token: 'second',
      path: pictureOf('tower-weld-autumn'),
      for: 'read',
    });
    await call('shot.take', { visitId, tokens: ['second'] });
    await expect.poll(async () => (await call('visit.get', { id: visitId })).shots.length, { timeout: 20_000 }).toBe(2);
    const { shots } = await call('visit.get', { id: visitId });
    const plane = await call('calibration.add', { shotId: one.shot.id, reference: fourPoints });
    const mark = await call('mark.add', { shotId: shots[1]?.id ?? '', shape: 'line', points: [from, to] });
    await expect(call('mark.change', { id: mark.id, calibrationId: plane.id })).rejects.toThrow(
      'calibration-of-another-photo',
    );
  }, 60_000);

  it('warns of a mark whose finding is on another part than the measured face', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    await call('calibration.add', { shotId: shot.id, reference: fourPoints, component: 'ENG/HD.1' });
    const mark = await call('mark.add', { shotId: shot.id, shape: 'line', points: [from, to] });
    const finding = await call('finding.add', { visitId, markId: mark.id, locations: ['ENG/HD.1/EVS.3.1'] });
    const warnings = async () => (await call('visit.get', { id: visitId })).sizes[0]?.size.warnings;
    expect(await warnings()).not.toContain('off-plane');
    await call('finding.change', { id: finding.id, locations: ['ENG/BLK'] });
    expect(await warnings()).toContain('off-plane');
  }, 60_000);
});

describe('a size', () => {
  it('without a scale is in pixels and says so; the finding does not take it', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    const mark = await call('mark.add', { shotId: shot.id, shape: 'line', points: [from, to] });
    const finding = await call('finding.add', { visitId, markId: mark.id });
    const { sizes } = await call('visit.get', { id: visitId });
    expect(sizes[0]?.size.text).toContain('not calibrated');
    const take = (markId: string) =>
      call('finding.change', { id: finding.id, quantities: { length: { fromMark: markId } } });
    await expect(take(mark.id)).rejects.toThrow('mark-not-calibrated');
    await expect(take('nothing')).rejects.toThrow('not-found');
    await call('calibration.add', { shotId: shot.id, reference: fourPoints });
    await expect(
      call('finding.change', { id: finding.id, quantities: { width: { fromMark: mark.id, measure: 'width' } } }),
    ).rejects.toThrow('mark-without-size');
  }, 60_000);

  it('of three points has an angle too', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    await call('calibration.add', { shotId: shot.id, reference: fourPoints });
    const plane = fourPoints.method === 'known-points' ? fourPoints.points : [];
    const [a, b, c] = plane;
    if (!a || !b || !c) throw new Error('three points are needed');
    await call('mark.add', { shotId: shot.id, shape: 'path', points: [a.px, b.px, c.px] });
    const { sizes } = await call('visit.get', { id: visitId });
    // Plane trigonometry on the scene's own coordinates.
    const [u, v] = [a, c].map(({ mm }) => Math.atan2(mm.y - b.mm.y, mm.x - b.mm.x));
    const turn = Math.abs((((u ?? 0) - (v ?? 0)) * 180) / Math.PI) % 360;
    expect(sizes[0]?.angle?.value).toBeCloseTo(turn > 180 ? 360 - turn : turn, 0);
  }, 60_000);
});

describe('a trace', () => {
  it('from a spot to itself, or off the photo, is refused', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    await expect(call('mark.trace', { shotId: shot.id, points: [from, from] })).rejects.toThrow('trace-too-short');
    await expect(call('mark.trace', { shotId: shot.id, points: [from, { x: -50, y: 4 }] })).rejects.toThrow(
      'point-outside-photo',
    );
    await expect(call('mark.trace', { shotId: 'nothing', points: [from, to] })).rejects.toThrow('not-found');
    expect((await call('visit.get', { id: visitId })).marks).toEqual([]);
  }, 60_000);
});

describe('a face straightened', () => {
  it('is a picture in which equal lengths of the face are equal, and its pixels map both ways', async () => {
    const { call, shot, recorder } = await withPhoto(scene);
    const plane = await call('calibration.add', { shotId: shot.id, reference: fourPoints });
    const straight = await call('photo.straighten', { calibrationId: plane.id });
    const located = await locatePhoto(recorder, straight.url);
    const meta = await sharp(readFileSync(located?.path ?? '')).metadata();
    expect([meta.width, meta.height]).toEqual([straight.width, straight.height]);
    const back = invert(straight.toPhoto);
    if (!back) throw new Error('the way back is missing');
    const points = fourPoints.method === 'known-points' ? fourPoints.points : [];
    for (const p of points) {
      for (const q of points) {
        const [here, there] = [project(back, p.px), project(back, q.px)];
        if (!here || !there) throw new Error('out of sight');
        const mm = Math.hypot(p.mm.x - q.mm.x, p.mm.y - q.mm.y);
        expect(Math.hypot(there.x - here.x, there.y - here.y) / straight.pxPerMm).toBeCloseTo(mm, 1);
      }
    }
    expect(project(straight.toPhoto, project(back, from) ?? from)?.x).toBeCloseTo(from.x, 6);
    // The same picture is not made twice.
    expect(await call('photo.straighten', { calibrationId: plane.id })).toEqual(straight);
  }, 60_000);

  it('is refused for a known length, which does not tell how the face leans', async () => {
    const { call, shot } = await withPhoto(scene);
    const reference: Reference = { method: 'known-length', plane: 'rule', ends: [from, to], lengthMm: 15 };
    const plane = await call('calibration.add', { shotId: shot.id, reference });
    await expect(call('photo.straighten', { calibrationId: plane.id })).rejects.toThrow('calibration-straight-already');
  }, 60_000);
});
