import { closed, label, type Primitive } from '../../diagrams/drawing.ts';
import type { UnitSystem } from '../../quantities/units.ts';
import type { SheetPicture } from '../../sheets/sheet-kind.ts';
import { frameOf } from './frame.ts';
import { inShopUnits } from './in-shop-units.ts';
import type { Plot } from './plot.ts';

type BarsPicture = Extract<SheetPicture, { kind: 'bars' }>;

/** One bar for each, from nothing up: a low neighbour is seen beside its neighbours. */
export function barsPlot({ unit, values, labels }: BarsPicture, system: UnitSystem): Plot | null {
  if (values.length < 2) return null;
  const shop = inShopUnits(unit, system);
  const shown = values.map(shop.of);
  const frame = frameOf({
    x: [0.5, values.length + 0.5],
    y: [0, ...shown],
    xTitle: 'cylinder',
    yTitle: shop.unit,
    height: 240,
    xNames: labels.map((name, index) => ({ at: index + 1, name })),
  });
  const half = Math.min(24, (frame.x(2) - frame.x(1)) * 0.32);
  const bars = shown.flatMap((value, index): Primitive[] => {
    const middle = frame.x(index + 1);
    const [from, to] = [frame.y(0), frame.y(value)];
    return [
      closed(
        [
          { x: middle - half, y: from },
          { x: middle - half, y: to },
          { x: middle + half, y: to },
          { x: middle + half, y: from },
        ],
        'edge',
      ),
      label(middle, Math.min(from, to) - 6, String(Number(value.toPrecision(4))), 'middle', 'number'),
    ];
  });
  return {
    title: `Side by side, ${shop.unit}`,
    width: frame.width,
    height: frame.height,
    primitives: [...frame.axes, ...bars],
  };
}
