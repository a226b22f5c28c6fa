import { describe, expect, test } from 'vitest';
import {
  canLoseVertex,
  edgesOf,
  movedBy,
  nearestEdge,
  nearestVertex,
  withoutVertex,
  withVertex,
  withVertexAt,
} from '../../../../shared-lib/geometry/vertices.ts';

const square = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 10 },
  { x: 0, y: 10 },
];

describe('the points of a shape', () => {
  test('the nearest point is found, none in nothing', () => {
    expect(nearestVertex(square, { x: 9, y: 2 })).toEqual({ index: 1, away: Math.hypot(1, 2) });
    expect(nearestVertex([], { x: 0, y: 0 })).toBeNull();
  });

  test('an area has an edge from its last point to its first, a path has not', () => {
    expect(edgesOf('area', square)).toHaveLength(4);
    expect(edgesOf('path', square)).toHaveLength(3);
    expect(nearestEdge('area', square, { x: 1, y: 5 })?.index).toBe(3);
    expect(nearestEdge('path', square, { x: 1, y: 5 })?.index).not.toBe(3);
  });

  test('shapes of a fixed number of points take no further one', () => {
    for (const shape of ['line', 'arrow', 'span'] as const) expect(edgesOf(shape, square.slice(0, 2))).toEqual([]);
    expect(edgesOf('point', square.slice(0, 1))).toEqual([]);
  });

  test('a new point stands between its neighbours; on the closing edge it comes last', () => {
    expect(withVertex(square, 0, { x: 5, y: 0 })[1]).toEqual({ x: 5, y: 0 });
    expect(withVertex(square, 3, { x: 0, y: 5 }).at(-1)).toEqual({ x: 0, y: 5 });
  });

  test('an area keeps three points, a path two', () => {
    expect(canLoseVertex('area', square)).toBe(true);
    expect(canLoseVertex('area', square.slice(1))).toBe(false);
    expect(canLoseVertex('path', square.slice(2))).toBe(false);
    expect(canLoseVertex('line', square.slice(2))).toBe(false);
  });

  test('the original points are never changed', () => {
    const before = structuredClone(square);
    withVertex(square, 1, { x: 1, y: 1 });
    withoutVertex(square, 1);
    withVertexAt(square, 1, { x: 1, y: 1 });
    movedBy(square, 3, 4);
    expect(square).toEqual(before);
    expect(movedBy(square, 3, 4)[2]).toEqual({ x: 13, y: 14 });
  });
});
