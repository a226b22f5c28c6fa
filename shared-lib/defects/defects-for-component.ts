import { parseLocation } from '../parts/parse-location.ts';
import type { Defect } from './defect.ts';
import { defects } from './index.ts';

/**
 * The kinds for a part: those that belong to it first, then those that may be anywhere, then all others, because a
 * mechanic finds what no list expects. Nothing is left out.
 *
 * @param place  a place or bare path; null while nobody has said where
 */
export function defectsForComponent(place: string | null): {
  readonly fitting: readonly Defect[];
  readonly others: readonly Defect[];
} {
  if (place === null) return { fitting: [...defects], others: [] };
  const codes = parseLocation(place).path.map(({ code }) => code);
  const own = ({ where }: Defect) => where !== 'anywhere' && where.some((code) => codes.includes(code));
  const anywhere = ({ where }: Defect) => where === 'anywhere';
  const all: readonly Defect[] = defects;
  return {
    fitting: [...all.filter(own), ...all.filter(anywhere)],
    others: all.filter((defect) => !own(defect) && !anywhere(defect)),
  };
}
