import { describe, expect, it } from 'vitest';
import { plotOf } from '../../../../shared-lib/readings/plots/plot-of.ts';
import type { SheetPicture } from '../../../../shared-lib/sheets/sheet-kind.ts';

const paths = (picture: SheetPicture) =>
  (plotOf(picture, 'metric')?.primitives ?? []).flatMap((each) => (each.kind === 'path' ? [each] : []));
const labels = (picture: SheetPicture) =>
  (plotOf(picture, 'metric')?.primitives ?? []).flatMap((each) => (each.kind === 'label' ? [each.text] : []));

describe('lines of equal height', () => {
  const points = [0, 100, 200].flatMap((xMm) => [0, 100].map((yMm) => ({ xMm, yMm, heightMm: xMm / 1000 - 0.1 })));
  const slope: SheetPicture = { kind: 'surface', points, zoneMm: 0.2 };

  it('run across a slope, straight and square to it', () => {
    const contours = paths(slope).filter(({ closed }) => !closed);
    expect(contours.length).toBeGreaterThan(4);
    for (const { points: ends } of contours) expect(ends[0]?.x).toBeCloseTo(ends[1]?.x ?? Number.NaN, 6);
  });

  it('are dashed below the middle of the zone', () => {
    const contours = paths(slope).filter(({ closed }) => !closed);
    // The face is drawn in the middle of its plot, and its slope is nought there.
    const middle = (plotOf(slope, 'metric')?.width ?? 0) / 2;
    for (const {
      points: [end],
      dashed,
    } of contours)
      if (Math.abs((end?.x ?? 0) - middle) > 5) expect(dashed).toBe((end?.x ?? 0) < middle);
  });

  it('are none where all points stand on one line: that is no face', () => {
    const row = points.filter(({ yMm }) => yMm === 0);
    expect(plotOf({ kind: 'surface', points: row, zoneMm: 0.2 }, 'metric')).toBeNull();
  });
});

describe('a bore', () => {
  const bore: SheetPicture = {
    kind: 'bore',
    nominalMm: 100,
    depthsMm: [10, 60, 110],
    diametersMm: [
      [100.142, 100.098],
      [100.071, 100.055],
      [100.028, 100.022],
    ],
  };

  it('has one line for each direction, wider at the top where it is worn most', () => {
    const down = paths(bore).filter(
      ({ points }) => points.length === 3 && new Set(points.map(({ y }) => y)).size === 3,
    );
    expect(down).toHaveLength(2);
    for (const { points } of down) {
      const xs = points.map(({ x }) => x);
      expect(xs.toSorted((a, b) => b - a)).toEqual(xs);
    }
  });

  it('is in the shop’s units', () => {
    expect(labels(bore)).toContain('from the top, mm');
    const us = plotOf(bore, 'us')?.primitives.flatMap((each) => (each.kind === 'label' ? [each.text] : []));
    expect(us).toContain('from the top, in');
  });
});

it('a trend goes on to where it heads, with its limit', () => {
  const trend: SheetPicture = {
    kind: 'trend',
    unit: 'mm',
    points: [
      { hours: 4120, value: 12 },
      { hours: 4300, value: 18 },
      { hours: 4510, value: 29 },
    ],
    limit: 40,
  };
  expect(labels(trend)).toContain('limit');
  expect(paths(trend).filter(({ dashed }) => dashed)).toHaveLength(2);
  expect(plotOf({ ...trend, points: trend.points.slice(0, 1) }, 'metric')).toBeNull();
});
