import { grownOutline } from '../../geometry/outlines/area.ts';
import type { Stretches } from '../../geometry/outlines/outline.ts';
import type { ShapeName } from '../../model/mark.ts';
import type { PrintedPoint, PrintedStroke } from '../model.ts';
import { beside, simplify } from './beside.ts';

/** One step of the drawn language on paper: a CSS pixel. */
const pixelMm = 25.4 / 96;

/** How far a line or path stands beside what it marks, in mm at full size. */
export const offsetMm = 11 * pixelMm;

const ringRadiusMm = 10 * pixelMm;
const headMm = 12 * pixelMm;
const headSpread = Math.PI / 6;

type Vector = readonly [x: number, y: number];

const along = ([x, y]: PrintedPoint, [dx, dy]: Vector, distance: number): PrintedPoint => [
  x + dx * distance,
  y + dy * distance,
];

/** Unit vector from one point to another; rightwards where they coincide. */
function direction([ax, ay]: PrintedPoint, [bx, by]: PrintedPoint): Vector {
  const length = Math.hypot(bx - ax, by - ay);
  return length === 0 ? [1, 0] : [(bx - ax) / length, (by - ay) / length];
}

function turned([x, y]: Vector, angle: number): Vector {
  return [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
}

/** The two strokes of a head at `tip`, pointing along `to`. */
function head(tip: PrintedPoint, to: Vector, scale: number): PrintedPoint[] {
  const back: Vector = [-to[0], -to[1]];
  const wing = (angle: number) => along(tip, turned(back, angle), headMm * scale);
  return [wing(headSpread), tip, wing(-headSpread)];
}

function ring(middle: PrintedPoint, scale: number): PrintedPoint[] {
  return Array.from({ length: 36 }, (_, step) =>
    along(middle, turned([1, 0], (step * Math.PI) / 18), ringRadiusMm * scale),
  );
}

/** From beyond the offset line to just past the true end. */
function tick(end: PrintedPoint, normal: Vector, scale: number): PrintedPoint[] {
  return [along(end, normal, offsetMm * scale * 1.45), along(end, normal, -offsetMm * scale * 0.15)];
}

/** A line, path or span stands beside what it marks, with ticks down to its true ends: drawn on top it would hide the crack. */
function besideWithTicks(
  points: readonly PrintedPoint[],
  scale: number,
): { line: PrintedPoint[]; ticks: PrintedPoint[][] } {
  const { line, startNormal, endNormal } = beside(points, offsetMm * scale);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return { line: [], ticks: [] };
  return { line, ticks: [tick(first, startNormal, scale), tick(last, endNormal, scale)] };
}

/** What to draw for a mark whose points are already in mm on paper. Areas are outlines; nothing is filled. */
export function strokesFor(
  shape: ShapeName,
  points: readonly PrintedPoint[],
  { scale, dashed, unsure = [] }: { scale: number; dashed: boolean; unsure?: Stretches },
): PrintedStroke[] {
  const stroke = (of: readonly PrintedPoint[], closed = false): PrintedStroke => ({ points: of, closed, dashed });
  const solid = (of: readonly PrintedPoint[]): PrintedStroke => ({ points: of, closed: false, dashed: false });
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return [];
  switch (shape) {
    case 'point':
      return [stroke(ring(first, scale), true)];
    case 'area':
      return unsure.length === 0 ? [stroke(simplify(points, 0.08), true)] : border(points, unsure, dashed);
    case 'arrow':
      return [stroke([first, last]), solid(head(last, direction(first, last), scale))];
    case 'line':
    case 'path': {
      const { line, ticks } = besideWithTicks(points, scale);
      const lines = unsure.length === 0 ? [stroke(line)] : stretches(points, scale, unsure, stroke);
      return [...lines, ...ticks.map(solid)];
    }
    case 'span': {
      const { line, ticks } = besideWithTicks([first, last], scale);
      const [from, to] = [line[0] ?? first, line.at(-1) ?? last];
      return [
        stroke(line),
        ...ticks.map(solid),
        solid(head(from, direction(to, from), scale)),
        solid(head(to, direction(from, to), scale)),
      ];
    }
  }
}

/** A grown outline in pieces: where its border is hardly to be seen it is dotted. */
function border(points: readonly PrintedPoint[], unsure: Stretches, dashed: boolean): PrintedStroke[] {
  const pieces = grownOutline(
    points.map(([x, y]) => ({ x, y })),
    unsure,
  );
  return pieces.map(({ points: chain, isUnsure = false }) => {
    const of = simplify(
      chain.map(({ x, y }): PrintedPoint => [x, y]),
      0.08,
    );
    return { points: of, closed: false, dashed: dashed && !isUnsure, ...(isUnsure ? { dotted: true } : {}) };
  });
}

/** A traced path in pieces: where the tracer was not sure it is dotted. */
function stretches(
  points: readonly PrintedPoint[],
  scale: number,
  unsure: Stretches,
  stroke: (of: readonly PrintedPoint[]) => PrintedStroke,
): PrintedStroke[] {
  const piece = (from: number, to: number): PrintedStroke =>
    stroke(beside(points.slice(from, to + 1), offsetMm * scale, points).line);
  const strokes: PrintedStroke[] = [];
  let sureFrom = 0;
  for (const [from, to] of [...unsure].sort((a, b) => a[0] - b[0])) {
    if (from > sureFrom) strokes.push(piece(sureFrom, from));
    strokes.push({ ...piece(from, to), dashed: false, dotted: true });
    sureFrom = to;
  }
  if (sureFrom < points.length - 1) strokes.push(piece(sureFrom, points.length - 1));
  return strokes;
}
