import type { Layout } from '../model/layout.ts';
import { classesOfPlace } from '../parts/classes-of-place.ts';
import { lineWords } from '../parts/function-words.ts';
import { isBelow } from '../parts/is-below.ts';
import { parseLocation } from '../parts/parse-location.ts';
import type { PlaceRule } from './caution.ts';

/** The words a hydraulic part is named by, that are not what flows in it: boom, hoist, steer. */
function functionsOf(place: string): readonly string[] {
  return parseLocation(place)
    .path.flatMap(({ indices }) => indices)
    .filter((index) => typeof index === 'string')
    .filter((word) => /^[a-z]+$/.test(word) && !lineWords.some((line) => line === word));
}

/**
 * Whether a place is one of the parts that a rule speaks of.
 *
 * @param place  a place of the location grammar
 * @throws AppError 'location-malformed'
 */
export function matchesPlace(place: string, rule: PlaceRule, layout: Layout): boolean {
  const { classes, notClasses, parts, functions, ofActuator } = rule;
  const own = classesOfPlace(place, layout);
  return (
    (classes === undefined || classes.some((wanted) => own.has(wanted))) &&
    (notClasses === undefined || !notClasses.some((unwanted) => own.has(unwanted))) &&
    (parts === undefined || parts.some((part) => isBelow(place, part))) &&
    (functions === undefined || functionsOf(place).some((word) => functions.includes(word))) &&
    (ofActuator === undefined || functionsOf(place).length > 0)
  );
}
