import { componentsAlong } from './find-component.ts';
import type { Location, Side } from './location.ts';

export type PlaceDetail = 'clock' | 'depth' | 'end' | 'side';

const roundParts = ['BORE', 'LNR', 'PST', 'IN', 'OUT', 'SKT'];
const linedParts = ['HOSE', 'TUBE', 'HPL'];

/**
 * What makes sense to ask of a place beyond its part: a clock where the part has one, a depth where there is a datum to
 * measure from, an end on a hose, a side on a bore or a piston.
 */
export function detailsAsked({ path }: Location): readonly PlaceDetail[] {
  const components = componentsAlong(path);
  const codes = path.map(({ code }) => code);
  const asked: PlaceDetail[] = [];
  if (codes.some((code) => linedParts.includes(code))) asked.push('end');
  if (components.some((component) => component?.clock !== undefined)) asked.push('clock');
  if (components.some((component) => component?.datum !== undefined)) asked.push('depth');
  if (codes[0] === 'ENG' && codes.some((code) => roundParts.includes(code))) asked.push('side');
  return asked;
}

/** The sides of a bore, most often said first. */
export const boreSides: readonly Side[] = ['THR', 'MIN', 'FRONT', 'REAR'];
