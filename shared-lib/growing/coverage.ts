import { boundingBox } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';

/** Lines that a zone is cut into; the error falls with their square. */
const lineCount = 4000;

/**
 * Share of a zone that outlines cover, 0 to 1. Outlines may overlap each other and reach beyond the zone.
 *
 * @param outlines, zone  closed chains in one plane, in any one unit
 * @returns null for a zone without area
 * Source: areas by strips (midpoint rule); the even-odd rule says what is inside.
 */
export function coveredShare(outlines: readonly (readonly XY[])[], zone: readonly XY[]): number | null {
  const box = boundingBox(zone);
  if (!box || !(box.bottom > box.top)) return null;
  const step = (box.bottom - box.top) / lineCount;
  let whole = 0;
  let covered = 0;
  for (let line = 0; line < lineCount; line += 1) {
    const y = box.top + (line + 0.5) * step;
    const zoneSpans = spansAt(zone, y);
    for (const [from, to] of zoneSpans) whole += to - from;
    const patches = joined(outlines.flatMap((outline) => spansAt(outline, y)));
    for (const [from, to] of patches) {
      for (const [zoneFrom, zoneTo] of zoneSpans)
        covered += Math.max(0, Math.min(to, zoneTo) - Math.max(from, zoneFrom));
    }
  }
  return whole > 0 ? covered / whole : null;
}

type Span = readonly [number, number];

/** Where a level line runs inside a closed chain. */
function spansAt(chain: readonly XY[], y: number): Span[] {
  const crossings: number[] = [];
  for (const [index, a] of chain.entries()) {
    const b = chain[(index + 1) % chain.length];
    if (!b || a.y > y === b.y > y) continue;
    crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  }
  crossings.sort((a, b) => a - b);
  const spans: Span[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) spans.push([crossings[i] as number, crossings[i + 1] as number]);
  return spans;
}

function joined(spans: readonly Span[]): Span[] {
  const whole: [number, number][] = [];
  for (const [from, to] of spans.toSorted((a, b) => a[0] - b[0])) {
    const last = whole.at(-1);
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else whole.push([from, to]);
  }
  return whole;
}
