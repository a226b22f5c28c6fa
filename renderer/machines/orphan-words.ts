import type { WireError } from '../../shared-lib/contract/errors.ts';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';

/** The places that a new layout would orphan, as they are spoken on the layout they stand on; each once. */
export function orphanWords({ code, details }: WireError, layout: Layout): readonly string[] {
  const { places } = details;
  if (code !== 'layout-orphans' || !Array.isArray(places)) return [];
  const words = places.filter((place) => typeof place === 'string').map((place) => speakLocation(place, layout));
  return [...new Set(words)];
}
