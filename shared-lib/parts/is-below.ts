import type { LocationNode } from './location.ts';
import { parseLocation } from './parse-location.ts';

/** An item that leaves an index out means all of them. */
function covers(item: LocationNode, node: LocationNode | undefined): boolean {
  return (
    node !== undefined &&
    item.code === node.code &&
    item.indices.every((index, position) => index === node.indices[position])
  );
}

/**
 * Whether a place lies at an item of the inspection or below it.
 *
 * @param locationText  where something was found or read
 * @param itemText  the item; its qualifiers are not looked at
 * @throws AppError 'location-malformed'
 * @example isBelow('ENG/HD.1/EVS.3.1@to=INJB.3', 'ENG') // true
 * @example isBelow('BRK/LINING.L', 'BRK/LINING') // true
 */
export function isBelow(locationText: string, itemText: string): boolean {
  const place = parseLocation(locationText).path;
  return parseLocation(itemText).path.every((item, depth) => covers(item, place[depth]));
}
