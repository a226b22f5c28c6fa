import type { Location, LocationPath } from './location.ts';

/** A bare path as text: `ENG/HD.1/EVS.3.1`. */
export function formatPath(path: LocationPath): string {
  return path.map((node) => [node.code, ...node.indices].join('.')).join('/');
}

function range(from: number, to: number): string {
  return from === to ? `${from}` : `${from}-${to}`;
}

/**
 * Writes a place as canonical text: qualifiers always in one order, so that equal places are equal texts.
 *
 * @example formatLocation(parseLocation('HYD/HOSE.boom.L@z=340;end=A')) // 'HYD/HOSE.boom.L@end=A;z=340'
 */
export function formatLocation(location: Location): string {
  const { from, to, between, near, side, face, end, view, clock, depth, zone } = location.qualifiers;
  const pieces: string[] = [];
  if (from) pieces.push(`from=${formatPath(from)}`);
  if (to) pieces.push(`to=${formatPath(to)}`);
  if (between) pieces.push(`btw=${formatPath(between[0])},${formatPath(between[1])}`);
  if (near) pieces.push(`near=${formatPath(near.part)}${near.mm === null ? '' : `:${near.mm}`}`);
  if (side) pieces.push(`side=${side}`);
  if (face) pieces.push(`face=${face}`);
  if (end) pieces.push(`end=${end}`);
  if (view) pieces.push(`view=${view}`);
  if (clock) pieces.push(`clk=${range(clock.fromHour, clock.toHour)}`);
  if (depth) pieces.push(`z=${range(depth.fromMm, depth.toMm)}`);
  if (zone) pieces.push(`zone=${zone}`);
  const path = formatPath(location.path);
  return pieces.length === 0 ? path : `${path}@${pieces.join(';')}`;
}
