import Flatten from '@flatten-js/core';
import { polygonArea as areaByD3, polygonContains, polygonLength } from 'd3-polygon';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { measureShape } from '../../../../shared-lib/geometry/measures.ts';
import {
  angleDegrees,
  boundingBox,
  chainLength,
  distanceToChain,
  isInsidePolygon,
  polygonArea,
  segmentMeetsBox,
} from '../../../../shared-lib/geometry/plane.ts';

const coordinate = fc.double({ min: -12_000, max: 12_000, noNaN: true, noDefaultInfinity: true });
const point = fc.record({ x: coordinate, y: coordinate });
const wholePoint = fc.record({ x: fc.integer({ min: -500, max: 500 }), y: fc.integer({ min: -500, max: 500 }) });
const polygon = fc.array(point, { minLength: 3, maxLength: 40 });
const pairs = (points: readonly { x: number; y: number }[]) => points.map(({ x, y }): [number, number] => [x, y]);

describe('lengths and areas agree with d3-polygon 3.0.2', () => {
  test('area of any polygon', () => {
    fc.assert(
      fc.property(polygon, (points) => {
        expect(polygonArea(points)).toBeCloseTo(Math.abs(areaByD3(pairs(points))), 3);
      }),
    );
  });

  test('length round any polygon', () => {
    fc.assert(
      fc.property(polygon, (points) => {
        expect(chainLength(points, true)).toBeCloseTo(polygonLength(pairs(points)), 6);
      }),
    );
  });

  test('which points lie inside', () => {
    fc.assert(
      // Whole corners and a spot off the whole numbers: on an outline itself the two may rightly differ.
      fc.property(fc.array(wholePoint, { minLength: 3, maxLength: 40 }), wholePoint, (points, near) => {
        const at = { x: near.x + 0.37, y: near.y + 0.61 };
        expect(isInsidePolygon(at, points)).toBe(polygonContains(pairs(points), [at.x, at.y]));
      }),
    );
  });
});

describe('distances agree with @flatten-js/core 1.6.15', () => {
  test('from a point to a chain of segments', () => {
    fc.assert(
      fc.property(fc.array(wholePoint, { minLength: 2, maxLength: 12 }), wholePoint, (points, at) => {
        const spot = new Flatten.Point(at.x, at.y);
        const distances = points.slice(1).map((to, index) => {
          const from = points[index] ?? to;
          const isDot = from.x === to.x && from.y === to.y;
          const shape = isDot
            ? new Flatten.Point(to.x, to.y)
            : new Flatten.Segment(new Flatten.Point(from.x, from.y), new Flatten.Point(to.x, to.y));
          return spot.distanceTo(shape)[0];
        });
        expect(distanceToChain(at, points, false)).toBeCloseTo(Math.min(...distances), 6);
      }),
    );
  });
});

describe('angles, boxes and measures', () => {
  // Elementary geometry, worked by hand.
  test.each([
    [{ x: 1, y: 0 }, { x: 0, y: 1 }, 90],
    [{ x: 1, y: 0 }, { x: -1, y: 0 }, 180],
    [{ x: 1, y: 0 }, { x: 5, y: 0 }, 0],
    [{ x: 1, y: 0 }, { x: 1, y: -Math.sqrt(3) }, 60],
    [{ x: -3, y: 0 }, { x: 3, y: 3 }, 135],
  ])('between %o and %o the angle is %d degrees', (a, b, degrees) => {
    expect(angleDegrees(a, { x: 0, y: 0 }, b)).toBeCloseTo(degrees, 9);
  });

  test('an angle without two ways is not a number', () => {
    expect(angleDegrees({ x: 2, y: 2 }, { x: 2, y: 2 }, { x: 3, y: 3 })).toBeNaN();
  });

  test('a 3-4-5 triangle measures 12 round and 6 in area; a path of the same points 7 or 9', () => {
    const corners = [
      { x: 0, y: 0 },
      { x: 3, y: 0 },
      { x: 3, y: 4 },
    ];
    expect(measureShape('area', corners)).toEqual({ lengthPx: 12, areaPx2: 6 });
    expect(measureShape('path', corners)).toEqual({ lengthPx: 7, areaPx2: null });
    expect(measureShape('point', corners.slice(0, 1))).toEqual({ lengthPx: null, areaPx2: null });
    expect(measureShape('arrow', corners.slice(0, 2)).lengthPx).toBeNull();
  });

  test('a box holds every point and nothing has no box', () => {
    expect(boundingBox([])).toBeNull();
    expect(
      boundingBox([
        { x: 4, y: -1 },
        { x: -2, y: 7 },
      ]),
    ).toEqual({ left: -2, top: -1, right: 4, bottom: 7 });
  });

  test.each([
    ['through the middle of', { x: -5, y: 5 }, { x: 15, y: 5 }, true],
    ['inside', { x: 2, y: 2 }, { x: 3, y: 3 }, true],
    ['past a corner of', { x: -5, y: 4 }, { x: 4, y: -5 }, false],
    ['across a corner of', { x: -1, y: 4 }, { x: 4, y: -1 }, true],
    ['ending short of', { x: -9, y: 5 }, { x: -1, y: 5 }, false],
    ['along the outside of', { x: 11, y: 0 }, { x: 11, y: 10 }, false],
  ])('a segment %s a box (%o to %o): it meets it: %s', (_, a, b, meets) => {
    expect(segmentMeetsBox(a, b, { left: 0, top: 0, right: 10, bottom: 10 })).toBe(meets);
  });
});
