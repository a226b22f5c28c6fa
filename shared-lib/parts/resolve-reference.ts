import { componentsAlong, findComponent } from './find-component.ts';
import type { LocationPath } from './location.ts';

/**
 * The full path of a reference such as `INJB.3`, which is relative to the nearest parent that has such a part.
 *
 * @param reference  a path as written after from=, to=, btw= or near=
 * @param path  the place it is written on
 * @returns  null where no parent, up to the machine itself, has such a part
 */
export function resolveReference(reference: LocationPath, path: LocationPath): LocationPath | null {
  const known = componentsAlong(path).length;
  for (let depth = known; depth >= 0; depth -= 1) {
    const candidate = [...path.slice(0, depth), ...reference];
    if (findComponent(candidate) !== null) return candidate;
  }
  return null;
}
