import { circle, type LineWeight, label, open, type Primitive } from '../../diagrams/drawing.ts';
import type { UnitSystem } from '../../quantities/units.ts';
import type { SheetPicture } from '../../sheets/sheet-kind.ts';
import { frameOf } from './frame.ts';
import { inShopUnits } from './in-shop-units.ts';
import type { Plot } from './plot.ts';

type BorePicture = Extract<SheetPicture, { kind: 'bore' }>;

/** One line down the bore for each direction: thrust is heavy, the next thin, others dashed. */
const pens: readonly { weight: LineWeight; dashed: boolean }[] = [
  { weight: 'edge', dashed: false },
  { weight: 'line', dashed: false },
  { weight: 'line', dashed: true },
  { weight: 'hair', dashed: true },
];

const nameOf = (direction: number): string => (direction === 0 ? 'thrust' : `direction ${direction + 1}`);

/** How the bore opens down its length, from the top, against what it was when new. */
export function borePlot({ nominalMm, depthsMm, diametersMm }: BorePicture, system: UnitSystem): Plot | null {
  const all = diametersMm.flat();
  const directions = diametersMm[0]?.length ?? 0;
  if (all.length < 2 || directions === 0) return null;
  const shop = inShopUnits('mm', system);
  const from = nominalMm ?? Math.min(...all);
  const depths = depthsMm?.length === diametersMm.length ? depthsMm.map(shop.of) : diametersMm.map((_, row) => row);
  const isSaid = depthsMm?.length === diametersMm.length;
  const frame = frameOf({
    x: [0, ...all.map((diameter) => shop.of(diameter - from))],
    y: depths,
    xTitle: `over ${nominalMm === null ? 'the smallest' : 'the diameter when new'}, ${shop.unit}`,
    yTitle: isSaid ? `from the top, ${shop.unit}` : 'from the top',
    down: true,
    ...(isSaid ? {} : { yNames: depths.map((at, row) => ({ at, name: rowName(row, depths.length) })) }),
  });
  const lines = Array.from({ length: directions }, (_, direction): Primitive[] => {
    const points = diametersMm.flatMap((row, index) => {
      const diameter = row[direction];
      return diameter === undefined
        ? []
        : [{ x: frame.x(shop.of(diameter - from)), y: frame.y(depths[index] ?? index) }];
    });
    const { weight, dashed } = pens[Math.min(direction, pens.length - 1)] ?? { weight: 'line', dashed: true };
    // A bore is worn least at its foot, so the corner below is free for the names.
    const legend = frame.bottom - 12 - 20 * (directions - 1 - direction);
    const sample = [
      { x: frame.right - 132, y: legend - 5 },
      { x: frame.right - 98, y: legend - 5 },
    ];
    return [
      open(points, weight, dashed),
      ...points.map((point) => circle(point, 3, weight)),
      open(sample, weight, dashed),
      label(frame.right - 90, legend, nameOf(direction), 'start'),
    ];
  });
  const whenNew = open(
    [
      { x: frame.x(0), y: frame.top },
      { x: frame.x(0), y: frame.bottom },
    ],
    'hair',
    true,
  );
  return {
    title: 'Diameter down the bore',
    width: frame.width,
    height: frame.height,
    primitives: [...frame.axes, whenNew, ...lines.flat()],
  };
}

const rowName = (row: number, count: number): string =>
  row === 0 ? 'top' : row === count - 1 ? 'bottom' : String(row + 1);
