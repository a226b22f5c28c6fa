import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { boundingBox, polygonArea } from '../../../shared-lib/geometry/plane.ts';
import { coveredShare } from '../../../shared-lib/growing/coverage.ts';
import { sizeWords } from '../../../shared-lib/measuring/words.ts';
import { freshFolder } from '../../support/test-recorder.ts';
import { textOfPages } from '../reports/poppler.ts';
import { truthOf, withPhoto, xy } from './bench.ts';

/** A rendered scene of our own: the outline of the pitted band is exact in the photo. */
const scene = 'liner-coolant-side';
const band = (truthOf(scene).areas?.['pitted band']?.px ?? []).map(xy);
const middle = {
  x: band.reduce((sum, { x }) => sum + x, 0) / band.length,
  y: band.reduce((sum, { y }) => sum + y, 0) / band.length,
};
const box = boundingBox(band) ?? { left: 0, top: 0, right: 0, bottom: 0 };
const zone = [
  { x: box.left - 60, y: box.top - 40 },
  { x: box.right + 60, y: box.top - 40 },
  { x: box.right + 60, y: box.bottom + 50 },
  { x: box.left - 60, y: box.bottom + 50 },
];

describe('a pitted band on a liner', () => {
  it('is grown from a spot inside to about its true outline, and keeps how', async () => {
    const { call, shot } = await withPhoto(scene);
    const mark = await call('mark.grow', { shotId: shot.id, points: [middle] });
    if (mark.origin.by !== 'grown') throw new Error('not grown');
    expect(mark).toMatchObject({ shape: 'area', origin: { parameters: { points: [{}] } } });
    expect(mark.origin.reading.borderPx).toBeGreaterThan(0);
    // The scene's own truth, from its description; the pits' outermost rims are a matter of opinion.
    expect(coveredShare([mark.points], band)).toBeGreaterThan(0.8);
    expect(Math.abs(polygonArea(mark.points) / polygonArea(band) - 1)).toBeLessThan(0.2);
    for (const [from, to] of mark.origin.reading.unsure) {
      expect(from).toBeLessThanOrEqual(to);
      expect(to).toBeLessThan(mark.points.length);
    }
    const shifted = await call('mark.change', { id: mark.id, points: mark.points.slice(0, 40) });
    expect(shifted.origin).toEqual({ by: 'hand' });
  }, 60_000);

  it('has a coverage of the area drawn round it, which the finding takes over', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    const patch = await call('mark.grow', { shotId: shot.id, points: [middle] });
    const finding = await call('finding.add', { visitId, markId: patch.id, defect: 'scale' });
    const use = () =>
      call('finding.change', { id: finding.id, quantities: { coverage: { fromMark: patch.id, measure: 'coverage' } } });
    await expect(use()).rejects.toThrow('mark-without-size');
    await call('mark.add', { shotId: shot.id, shape: 'area', points: zone, role: 'note' });
    const coverage = (await use()).quantities.coverage;
    const truth = 100 * (coveredShare([band], zone) ?? 0);
    expect(coverage).toMatchObject({ origin: 'photo', how: 'photo 1, of the area drawn round it' });
    expect(Math.abs((coverage?.value ?? 0) - truth)).toBeLessThan(0.2 * truth);
  }, 60_000);

  it('is in the report as large as the window says; its annotation brings it back unchanged', async () => {
    const { call, recorder, visitId, shot } = await withPhoto(scene);
    const { features } = truthOf(scene);
    const [from, to] = [features['below the flange, thrust side'], features['first seal groove']];
    if (!from || !to) throw new Error('the scene has lost its features');
    const lengthMm = Math.hypot(...from.mm.map((value, axis) => value - (to.mm[axis] ?? 0)));
    await call('calibration.add', {
      shotId: shot.id,
      reference: { method: 'known-length', plane: 'coolant side', ends: [xy(from.px), xy(to.px)], lengthMm },
    });
    const patch = await call('mark.grow', { shotId: shot.id, points: [middle] });
    await call('finding.add', { visitId, markId: patch.id, defect: 'scale' });
    const { marks, sizes } = await call('visit.get', { id: visitId });
    const size = sizes.find(({ markId }) => markId === patch.id)?.size;
    expect(size?.unit).toBe('mm²');

    const folder = freshFolder();
    const offer = (name: string, use: 'read' | 'write') => {
      const token = `${use} ${name} ${Math.random()}`;
      recorder.offer({ token, path: join(folder, name), for: use });
      return token;
    };
    await call('report.print', { visitId, token: offer('report.pdf', 'write') });
    const text = textOfPages(readFileSync(join(folder, 'report.pdf')))
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    if (!size) throw new Error('no size');
    expect(text).toContain(sizeWords(size, 'metric').replaceAll(/\s+/g, ' '));

    await call('annotations.export', { visitId, shotId: shot.id, token: offer('marks.jsonld', 'write') });
    await call('mark.remove', { id: patch.id });
    await call('annotations.import', { visitId, token: offer('marks.jsonld', 'read') });
    expect((await call('visit.get', { id: visitId })).marks).toEqual(marks);
  }, 60_000);

  it('is refused off the photo, where nothing stands out, and taken back by undo', async () => {
    const { call, visitId, shot } = await withPhoto(scene);
    await expect(call('mark.grow', { shotId: shot.id, points: [{ x: -50, y: 10 }] })).rejects.toThrow(
      'point-outside-photo',
    );
    await expect(call('mark.grow', { shotId: shot.id, points: [] })).rejects.toThrow('invalid-input');
    const mark = await call('mark.grow', { shotId: shot.id, points: [middle] });
    expect((await call('visit.get', { id: visitId })).marks.map(({ id }) => id)).toEqual([mark.id]);
    await call('undo.undo', { visitId });
    expect((await call('visit.get', { id: visitId })).marks).toEqual([]);
  }, 60_000);
});
