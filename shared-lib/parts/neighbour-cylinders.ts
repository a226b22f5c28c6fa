import type { Layout } from '../model/layout.ts';
import { cylinderPlaces } from './cylinder-places.ts';

/**
 * The cylinders that stand next to one in the same bank, by the machine's own numbers, the one nearer the free end first.
 *
 * @returns  none where a V or flat engine has no list that says which bank a number stands in
 * Source: the handbook's 2.3 b.
 */
export function neighbourCylinders(cylinder: number, layout: Layout): readonly number[] {
  const places = cylinderPlaces(layout);
  const own = places.find((place) => place.number === cylinder);
  if (own === undefined) return [];
  if (own.bank === null && layout.engine.arrangement !== 'inline') return [];
  const bank = places.filter((place) => place.bank === own.bank).sort((a, b) => a.fromFreeEnd - b.fromFreeEnd);
  const at = bank.indexOf(own);
  return [bank[at - 1], bank[at + 1]].flatMap((place) => (place === undefined ? [] : [place.number]));
}
