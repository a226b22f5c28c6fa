import type { Layout } from '../model/layout.ts';
import { type Bank, cylinderPlaces } from './cylinder-places.ts';

/**
 * The machine's own number of a cylinder, from where it stands: the inverse of `ordinalFromFreeEnd`.
 *
 * @param fromFreeEnd  1 for the cylinder nearest the free end
 * @param bank  where the maker's list names banks; null where it does not
 * @returns  the number, or null where no cylinder stands there
 */
export function numberFromOrdinal(fromFreeEnd: number, bank: Bank | null, layout: Layout): number | null {
  const place = cylinderPlaces(layout).find(
    (candidate) => candidate.fromFreeEnd === fromFreeEnd && candidate.bank === bank,
  );
  return place?.number ?? null;
}
