import type { XY } from '../geometry/spaces.ts';
import type { Layout } from '../model/layout.ts';
import { type CylinderPlace, cylinderPlaces } from '../parts/cylinder-places.ts';
import { headCount, headOfCylinder } from '../parts/engine-counts.ts';

/** A bore of the plan, by the machine's own number. */
export interface Bore {
  readonly number: number;
  readonly centre: XY;
  readonly row: number;
}

/** The block or heads of one row, or one head of it. */
export interface HeadOutline {
  /** Null where the layout does not tell which head it is. */
  readonly head: number | null;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface EnginePlan {
  readonly bores: readonly Bore[];
  readonly heads: readonly HeadOutline[];
  readonly radius: number;
  readonly pitch: number;
  readonly width: number;
  readonly height: number;
  /** Between the two rows of an opposed engine. */
  readonly crankY: number;
  /** Banks that are named, by row. */
  readonly rowNames: readonly (string | null)[];
  /** A V or opposed engine whose list does not say which bank a number stands in. */
  readonly banksUnknown: boolean;
}

const widest = 308;
const edge = 4;
const bankNames = { L: 'left bank', R: 'right bank', A: 'bank A', B: 'bank B' } as const;

/** The right bank lies on the engine's right: above, with the fan end at the left and looking down. */
function rowOf(place: CylinderPlace, index: number, twoRows: boolean): number {
  if (!twoRows) return 0;
  if (place.bank === null) return index % 2;
  return place.bank === 'R' || place.bank === 'A' ? 0 : 1;
}

/** How far along its row a bore stands, in pitches from the first; the rows of a V are set off against one another. */
function alongOf(place: CylinderPlace, index: number, row: number, twoRows: boolean): number {
  if (!twoRows) return index;
  return place.bank === null ? Math.floor(index / 2) + row * 0.3 : place.fromFreeEnd - 1 + row * 0.3;
}

function byPlace(a: CylinderPlace, b: CylinderPlace): number {
  return a.fromFreeEnd - b.fromFreeEnd || (a.bank ?? '').localeCompare(b.bank ?? '') || a.number - b.number;
}

function headsOfRow(bores: readonly Bore[], layout: Layout, top: number, bottom: number, pitch: number): HeadOutline[] {
  const groups = new Map<number | null, Bore[]>();
  for (const bore of bores) {
    const head = headOfCylinder(bore.number, layout);
    groups.set(head, [...(groups.get(head) ?? []), bore]);
  }
  const gap = groups.size > 1 ? 2 : 0;
  return [...groups].map(([head, group]) => {
    const xs = group.map(({ centre }) => centre.x);
    return { head, left: Math.min(...xs) - pitch / 2 + gap, right: Math.max(...xs) + pitch / 2 - gap, top, bottom };
  });
}

/**
 * Where every bore stands, looking down on the decks with the fan end at the left: twelve o'clock is left, three (the
 * engine's right) is up.
 *
 * @param mirrored  looking up at the fire faces instead: left and right of the engine swap, the fan end stays at the left
 */
export function enginePlan(layout: Layout, mirrored: boolean): EnginePlan {
  const places = [...cylinderPlaces(layout)].sort(byPlace);
  const twoRows = layout.engine.arrangement !== 'inline' && places.length > 1;
  const spots = places.map((place, index) => {
    const row = rowOf(place, index, twoRows);
    return { number: place.number, row, along: alongOf(place, index, row, twoRows) };
  });
  const longest = Math.max(...spots.map(({ along }) => along)) + 1;
  const pitch = Math.min(72, Math.max(30, (widest - 2 * edge) / longest));
  const radius = pitch * 0.42;
  const rowHeight = 2 * radius + 36;
  const nameHeight = twoRows && places.some(({ bank }) => bank !== null) ? 18 : 0;
  const rowGap = (layout.engine.arrangement === 'opposed' ? 44 : 26) + nameHeight;
  const rows = twoRows ? 2 : 1;
  const topOf = (row: number) => {
    const shownRow = mirrored ? rows - 1 - row : row;
    return edge + nameHeight + shownRow * (rowHeight + rowGap);
  };
  const left = Math.max(edge, (widest - longest * pitch) / 2);
  const bores = spots.map(({ number, row, along }) => ({
    number,
    row,
    centre: { x: left + (along + 0.5) * pitch, y: topOf(row) + rowHeight / 2 },
  }));
  const rowNumbers = Array.from({ length: rows }, (_, row) => row);
  return {
    bores,
    heads: rowNumbers.flatMap((row) =>
      headsOfRow(
        bores.filter((bore) => bore.row === row),
        layout,
        topOf(row),
        topOf(row) + rowHeight,
        pitch,
      ),
    ),
    radius,
    pitch,
    width: Math.max(widest, left + longest * pitch + edge),
    height: edge + nameHeight + rows * rowHeight + (rows - 1) * rowGap + 18,
    crankY: edge + nameHeight + rowHeight + (rowGap - nameHeight + 18) / 2,
    rowNames: rowNumbers.map((row) => {
      const bank = places.find((place, index) => rowOf(place, index, twoRows) === row)?.bank ?? null;
      return bank === null ? null : bankNames[bank];
    }),
    banksUnknown: twoRows && places.some(({ bank }) => bank === null) && headCount(layout) > 1,
  };
}

/** The way an hour of the deck clock points on the plan: twelve to the fan end, clockwise from above. */
export function directionOfHour(hour: number, mirrored: boolean): XY {
  const turn = (hour / 12) * 2 * Math.PI;
  return { x: -Math.cos(turn), y: (mirrored ? 1 : -1) * Math.sin(turn) };
}
