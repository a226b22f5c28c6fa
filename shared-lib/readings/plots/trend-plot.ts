import { circle, label, open, type Primitive } from '../../diagrams/drawing.ts';
import type { UnitSystem } from '../../quantities/units.ts';
import type { SheetPicture } from '../../sheets/sheet-kind.ts';
import { bandAt, fitLine } from '../../trends/line.ts';
import { frameOf } from './frame.ts';
import { inShopUnits } from './in-shop-units.ts';
import type { Plot } from './plot.ts';

type TrendPicture = Extract<SheetPicture, { kind: 'trend' }>;

const steps = 24;

/** Readings over the machine's true hours, the line through them with its 95 % band, and the limit it heads for. */
export function trendPlot({ unit, points, limit }: TrendPicture, system: UnitSystem): Plot | null {
  if (points.length < 2) return null;
  const shop = inShopUnits(unit, system);
  const hours = points.map((point) => point.hours);
  const [first, last] = [Math.min(...hours), Math.max(...hours)];
  const until = last + (last - first) * 0.35;
  const line = fitLine(points.map((point) => ({ x: point.hours, y: shop.of(point.value) })));
  const along = Array.from({ length: steps + 1 }, (_, step) => first + ((until - first) * step) / steps);
  const bands = line === null ? [] : along.map((at) => ({ at, ...bandAt(line, at) }));
  const values = points.map((point) => shop.of(point.value));
  const range = Math.max(...values) - Math.min(...values);
  // A band that opens without bounds must not flatten the readings.
  const within = (value: number) =>
    Math.min(Math.max(...values) + 2 * range, Math.max(Math.min(...values) - 2 * range, value));
  const edges = bands.flatMap(({ middle, ofLine }) =>
    ofLine === null ? [middle] : [within(middle - ofLine), within(middle + ofLine)],
  );
  const shownLimit = limit === null ? null : shop.of(limit);
  const frame = frameOf({
    x: [first, until],
    y: [...values, ...edges, ...(shownLimit === null ? [] : [shownLimit])],
    xTitle: 'hours of the machine',
    yTitle: shop.unit,
  });
  const chain = (of: (band: (typeof bands)[number]) => number | null, weight: 'line' | 'hair', dashed: boolean) => {
    const chained = bands.flatMap((band) => {
      const value = of(band);
      return value === null ? [] : [{ x: frame.x(band.at), y: frame.y(within(value)) }];
    });
    return chained.length < 2 ? [] : [open(chained, weight, dashed)];
  };
  const limitLine: Primitive[] =
    shownLimit === null
      ? []
      : [
          open(
            [
              { x: frame.left, y: frame.y(shownLimit) },
              { x: frame.right, y: frame.y(shownLimit) },
            ],
            'edge',
          ),
          label(frame.left + 8, frame.y(shownLimit) - 6, 'limit', 'start', 'strong'),
        ];
  return {
    title: `Over the hours, ${shop.unit}; dashed: where the line itself can be (95 %)`,
    width: frame.width,
    height: frame.height,
    primitives: [
      ...frame.axes,
      ...limitLine,
      ...chain(({ middle }) => middle, 'line', false),
      ...chain(({ middle, ofLine }) => (ofLine === null ? null : middle - ofLine), 'hair', true),
      ...chain(({ middle, ofLine }) => (ofLine === null ? null : middle + ofLine), 'hair', true),
      ...points.map((point) => circle({ x: frame.x(point.hours), y: frame.y(shop.of(point.value)) }, 4, 'edge')),
    ],
  };
}
