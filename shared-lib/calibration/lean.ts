import { distance } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import { fitEllipse } from './ellipse.ts';
import type { CalibrationInput, MeasuredShape } from './input.ts';
import type { PlaneMapping } from './plane-mapping.ts';
import { sizeOf } from './shape-size.ts';

/** Without a photo's size its focal length is taken as this, px. */
const usualFocalPx = 3500;
const directions = 8;

/**
 * Standard uncertainty of a size for the lean of the plane that the mapping does not take out: every lean that the reference
 * allows is tried in a pinhole camera, and the root mean square of what changes is taken. A known length allows any lean up
 * to its bound; a circle fixes the angle and leaves open which side is nearer.
 *
 * The focal length is taken as the photo's longer side (a phone's main camera; common practice, no source), the line of
 * sight through the middle of the reference.
 */
export function leanShare(
  input: CalibrationInput,
  mapping: PlaneMapping,
  shape: MeasuredShape['shape'],
  points: readonly XY[],
  value: number,
): number {
  if (input.method === 'known-points') return 0;
  const focalPx = input.photo ? Math.max(input.photo.width, input.photo.height) : usualFocalPx;
  let squares = 0;
  const leans = allowedLeans(input, mapping);
  for (const { tilt, towards } of leans) {
    const onPlane = leaningPlane(mapping.referenceAt, focalPx, tilt, towards);
    const size = sizeOf(shape, points.map(onPlane));
    const scale = scaleOf(input, onPlane);
    const power = shape === 'area' ? 2 : shape === 'angle' ? 0 : 1;
    squares += (size * scale ** power - value) ** 2;
  }
  return Math.sqrt(squares / leans.length);
}

function allowedLeans(input: CalibrationInput, { tilt, leanAlong }: PlaneMapping): { tilt: number; towards: number }[] {
  if (input.method === 'known-circle' && tilt !== null && leanAlong !== null)
    return [0, Math.PI].map((side) => ({ tilt, towards: leanAlong + side }));
  const bound = input.method === 'known-length' ? (input.tiltDegrees * Math.PI) / 180 : 0;
  // Tilts of equal weight from nothing to the bound, in directions all round.
  return [1 / 6, 1 / 2, 5 / 6].flatMap((part) =>
    Array.from({ length: directions }, (_, k) => ({ tilt: part * bound, towards: (2 * Math.PI * k) / directions })),
  );
}

/** Where rays through the photo meet a plane that leans by `tilt` towards a direction of the photo, in the plane's own axes. */
function leaningPlane(sight: XY, focalPx: number, tilt: number, towards: number): (point: XY) => XY {
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const [cd, sd] = [Math.cos(towards), Math.sin(towards)];
  return ({ x, y }) => {
    const rx = (x - sight.x) / focalPx;
    const ry = (y - sight.y) / focalPx;
    const along = rx * cd + ry * sd;
    // The plane holds the point at distance 1 on the line of sight. Near its horizon it is cut off: nobody measures there.
    const depth = c / Math.max(0.05, c + s * along);
    return { x: depth * (c * along) - s * (depth - 1), y: depth * (ry * cd - rx * sd) };
  };
}

function scaleOf(input: CalibrationInput, onPlane: (point: XY) => XY): number {
  if (input.method === 'known-length') return input.lengthMm / distance(onPlane(input.ends[0]), onPlane(input.ends[1]));
  if (input.method !== 'known-circle') return 1;
  const round = fitEllipse(input.rim.map(onPlane));
  return round ? input.diameterMm / (2 * Math.sqrt(round.semiMajor * round.semiMinor)) : Number.NaN;
}
