import type { Layout } from '../model/layout.ts';
import { cylinderPlaces } from './cylinder-places.ts';

/** How many decks, heads or head gaskets: at least one to a bank. */
export function headCount(layout: Layout): number {
  const banks = layout.engine.arrangement === 'inline' ? 1 : 2;
  return Math.max(layout.engine.heads, Math.min(banks, layout.engine.cylinders));
}

/** The most main bearings the engine can have: one at each end and between cylinders; a V shares a crankpin between two. */
export function mainCount(layout: Layout): number {
  const { arrangement, cylinders } = layout.engine;
  return arrangement === 'V' ? Math.ceil(cylinders / 2) + 1 : cylinders + 1;
}

/**
 * The head a cylinder stands under, where the layout tells: one head, a head to each cylinder, or heads in equal groups on
 * one bank. Null where it does not.
 */
export function headOfCylinder(cylinder: number, layout: Layout): number | null {
  const heads = headCount(layout);
  const { arrangement, cylinders } = layout.engine;
  if (heads === 1) return 1;
  const numbersAreOneToLast = cylinderPlaces(layout).every((place) => place.number <= cylinders);
  if (heads === cylinders) return numbersAreOneToLast ? cylinder : null;
  if (arrangement !== 'inline' || layout.numbering.scheme === 'list' || cylinders % heads !== 0) return null;
  return Math.ceil(cylinder / (cylinders / heads));
}

/** The numbers of the machine's own scheme, from the free end; odd lists keep every number they name. */
export function cylinderNumbers(layout: Layout): readonly number[] {
  return [...cylinderPlaces(layout)]
    .sort((a, b) => a.fromFreeEnd - b.fromFreeEnd || (a.bank ?? '').localeCompare(b.bank ?? ''))
    .map((place) => place.number);
}
