import { Delaunay } from 'd3-delaunay';
import { scaleLinear } from 'd3-scale';
import { circle, closed, label, open, type Primitive } from '../../diagrams/drawing.ts';
import type { XY } from '../../geometry/spaces.ts';
import type { UnitSystem } from '../../quantities/units.ts';
import type { SheetPicture } from '../../sheets/sheet-kind.ts';
import { inShopUnits } from './in-shop-units.ts';
import type { Plot } from './plot.ts';

type SurfacePicture = Extract<SheetPicture, { kind: 'surface' }>;
type SurfacePoint = SurfacePicture['points'][number];

const width = 460;
const margin = 46;
/** Beyond so many points their heights would cover the lines. */
const mostLabels = 30;

/**
 * Lines of equal height over a face: solid above the middle of the zone, dashed below.
 *
 * Heights are taken as plane between three neighbouring points (Delaunay's triangles), so that no hill is drawn that
 * nobody measured.
 */
export function surfacePlot({ points, zoneMm }: SurfacePicture, system: UnitSystem): Plot | null {
  if (points.length < 3) return null;
  const xs = points.map(({ xMm }) => xMm);
  const ys = points.map(({ yMm }) => yMm);
  const spanX = Math.max(...xs) - Math.min(...xs);
  const spanY = Math.max(...ys) - Math.min(...ys);
  if (spanX === 0 || spanY === 0) return null;
  const perMm = Math.min((width - 2 * margin) / spanX, 260 / spanY);
  const height = spanY * perMm + 2 * margin;
  const left = (width - spanX * perMm) / 2;
  const at = (x: number, y: number): XY => ({
    x: left + (x - Math.min(...xs)) * perMm,
    y: height - margin - (y - Math.min(...ys)) * perMm,
  });
  const shop = inShopUnits('mm', system);
  const heights = points.map(({ heightMm }) => heightMm);
  const [lowest, highest] = [Math.min(...heights), Math.max(...heights)];
  const levels = scaleLinear().domain([lowest, highest]).ticks(7);
  const edge = Delaunay.from(points.map(({ xMm, yMm }) => [xMm, yMm])).hullPolygon();
  return {
    title: `Height of the face, ${shop.unit}; the zone is ${written(shop.of(zoneMm))} ${shop.unit} wide`,
    width,
    height,
    primitives: [
      closed(
        [...edge].map(([x, y]) => at(x ?? 0, y ?? 0)),
        'line',
      ),
      ...levels.flatMap((level) => contour(points, level, at)),
      ...points.flatMap((point) => marked(point, points.length, lowest, highest, at, shop.of)),
    ],
  };
}

function contour(points: readonly SurfacePoint[], level: number, at: (x: number, y: number) => XY): Primitive[] {
  const { triangles } = Delaunay.from(points.map(({ xMm, yMm }) => [xMm, yMm]));
  const lines: Primitive[] = [];
  for (let first = 0; first + 2 < triangles.length; first += 3) {
    const corners = [0, 1, 2].flatMap((offset) => points[triangles[first + offset] ?? -1] ?? []);
    const [a, b, c] = corners;
    if (a === undefined || b === undefined || c === undefined) continue;
    const cuts = [
      [a, b],
      [b, c],
      [c, a],
    ].flatMap(([from, to]) => (from && to ? crossing(from, to, level, at) : []));
    const [start, end] = cuts;
    if (start !== undefined && end !== undefined)
      lines.push(open([start, end], level >= 0 ? 'line' : 'hair', level < 0));
  }
  return lines;
}

function crossing(from: SurfacePoint, to: SurfacePoint, level: number, at: (x: number, y: number) => XY): XY[] {
  const [low, high] = [from.heightMm - level, to.heightMm - level];
  if (low < 0 === high < 0) return [];
  const share = low / (low - high);
  return [at(from.xMm + share * (to.xMm - from.xMm), from.yMm + share * (to.yMm - from.yMm))];
}

function marked(
  { xMm, yMm, heightMm }: SurfacePoint,
  count: number,
  lowest: number,
  highest: number,
  at: (x: number, y: number) => XY,
  inShop: (value: number) => number,
): Primitive[] {
  const point = at(xMm, yMm);
  const isExtreme = heightMm === lowest || heightMm === highest;
  if (count > mostLabels && !isExtreme) return [];
  const words = `${heightMm > 0 ? '+' : ''}${written(inShop(heightMm))}`;
  return [
    circle(point, isExtreme ? 4 : 2, 'line'),
    label(point.x, point.y - 8, words, 'middle', isExtreme ? 'strong' : 'word'),
  ];
}

const written = (value: number): string => String(Number(value.toFixed(4))).replace('-', '\u2212');
