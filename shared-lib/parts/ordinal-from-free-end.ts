import type { Layout } from '../model/layout.ts';
import { type CylinderPlace, cylinderPlaces } from './cylinder-places.ts';

/**
 * Where the cylinder with the machine's own number stands, counted from the free (fan) end.
 *
 * @param number  the machine's own cylinder number
 * @returns  its bank, where the maker's list names banks, and its order from the free end within that bank; null for a
 *   number the engine does not have
 * Source: the handbook's 2.2 (free-first, drive-first or the maker's list; ISO 1204 leaves tractor engines out).
 * @example ordinalFromFreeEnd(1, { ...layout of 6, drive-first }) // { bank: null, fromFreeEnd: 6 }
 */
export function ordinalFromFreeEnd(number: number, layout: Layout): Omit<CylinderPlace, 'number'> | null {
  const place = cylinderPlaces(layout).find((candidate) => candidate.number === number);
  return place === undefined ? null : { bank: place.bank, fromFreeEnd: place.fromFreeEnd };
}
