import { distance } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import { circlePoses, type Normal } from './circle-poses.ts';
import { fitEllipse } from './ellipse.ts';
import type { Possible } from './expand.ts';
import { possibleEllipses } from './flatness.ts';
import type { CalibrationInput, MeasuredShape } from './input.ts';
import type { PlaneMapping } from './plane-mapping.ts';
import { sizeOf } from './shape-size.ts';

/** Without a photo's size its longer side is taken as this, px. */
const usualSidePx = 3500;
/**
 * Focal lengths that a close photo may have been taken with, each as likely, in longer sides of the photo: five even steps
 * (of ratio) from 0.7 to 1.4, which is 24 to 50 mm in terms of 35-mm film. Common practice, no source.
 */
const focalLengths = [0.1, 0.3, 0.5, 0.7, 0.9].map((part) => 0.7 * 2 ** part);
/** Sine of the angle between a ray and a plane that it only just meets. */
const nearHorizon = 0.05;
/** Nobody photographs a face that he measures on from farther aside. Common practice, no source. */
const steepestDegrees = 60;
const tilts = [0.1, 0.3, 0.5, 0.7, 0.9];
const directions = 8;

/**
 * How far off a size may be for the lean of the plane that the mapping does not take out: every lean that the reference
 * allows is tried in a pinhole camera, and what changes is told for each with its likelihood. A known length allows any
 * lean up to its bound; a circle allows two, as flat as it is seen, and leaves open which.
 *
 * The camera's axis is taken to meet the middle of the photo. Before the reference is looked at, every tilt is as likely as
 * the next, in directions all round: among the planes of all directions, one that leans little is the likelier.
 *
 * @param clickingPx  standard uncertainty of one click
 * @returns none where the reference settles the plane
 */
export function leanErrors(
  input: CalibrationInput,
  { referenceAt }: PlaneMapping,
  shape: MeasuredShape['shape'],
  points: readonly XY[],
  value: number,
  clickingPx: number,
): Possible[] {
  if (input.method === 'known-points') return [];
  const { photo } = input;
  const sidePx = photo ? Math.max(photo.width, photo.height) : usualSidePx;
  const sight = photo ? { x: (photo.width - 1) / 2, y: (photo.height - 1) / 2 } : referenceAt;
  const power = shape === 'area' ? 2 : shape === 'angle' ? 0 : 1;
  const planes = allowedPlanes(input, sight, sidePx, clickingPx);
  const shows = ({ normal: [nx, ny, nz], focalPx }: Allowed): boolean =>
    points.every(({ x, y }) => (nx * (x - sight.x) + ny * (y - sight.y)) / focalPx + nz > nearHorizon);
  // A plane under whose horizon the mark would lie is none that it was seen on.
  const seen = planes.filter(shows);
  return (seen.length > 0 ? seen : planes).map(({ normal, focalPx, weight }) => {
    const onPlane = ontoPlane(sight, focalPx, normal);
    return { error: sizeOf(shape, points.map(onPlane)) * scaleOf(input, onPlane) ** power - value, weight };
  });
}

interface Allowed {
  readonly normal: Normal;
  readonly focalPx: number;
  readonly weight: number;
}

function allowedPlanes(
  input: Exclude<CalibrationInput, { method: 'known-points' }>,
  sight: XY,
  sidePx: number,
  clickingPx: number,
): Allowed[] {
  const focals = focalLengths.map((length) => length * sidePx);
  if (input.method === 'known-circle') {
    const clicked = fitEllipse(input.rim);
    const ellipses = clicked ? possibleEllipses(clicked, input.rim, clickingPx, tilts.length) : [];
    return focals.flatMap((focalPx) =>
      ellipses.flatMap((ellipse) =>
        circlePoses(ellipse, sight, focalPx).map((normal) => ({ normal, focalPx, weight: likelihood(normal) })),
      ),
    );
  }
  // Tilts of equal weight from nothing to the bound, in directions all round, the focal lengths dealt out among them.
  return tilts.flatMap((part, k) =>
    Array.from({ length: directions }, (_, turn) => {
      const tilt = (part * input.tiltDegrees * Math.PI) / 180;
      const towards = (2 * Math.PI * turn) / directions;
      const aside = Math.sin(tilt);
      return {
        normal: [aside * Math.cos(towards), aside * Math.sin(towards), Math.cos(tilt)] as const,
        focalPx: focals[(k + turn) % focals.length] ?? sidePx,
        weight: 1,
      };
    }),
  );
}

/** Directions at a tilt lie on a circle that is as long as the tilt's sine: the fewer there are, the likelier each. */
function likelihood([nx, ny, nz]: Normal): number {
  const isTooSteep = nz < Math.cos((steepestDegrees * Math.PI) / 180);
  return isTooSteep ? 1e-3 : 1 / Math.max(0.01, Math.hypot(nx, ny));
}

/** Where rays through the photo meet a plane, in axes of its own, in distances along the camera's axis. */
function ontoPlane(sight: XY, focalPx: number, [nx, ny, nz]: Normal): (point: XY) => XY {
  // Axes of the plane: one that lies level in the camera, and one square to it and to the normal.
  const flat = Math.hypot(nx, nz);
  const across = [nz / flat, 0, -nx / flat] as const;
  const down = [ny * across[2], nz * across[0] - nx * across[2], -ny * across[0]] as const;
  return ({ x, y }) => {
    const rx = (x - sight.x) / focalPx;
    const ry = (y - sight.y) / focalPx;
    // Near its horizon the plane is cut off: nobody measures there.
    const depth = nz / Math.max(nearHorizon, nx * rx + ny * ry + nz);
    return {
      x: depth * (rx * across[0] + across[2]),
      y: depth * (rx * down[0] + ry * down[1] + down[2]),
    };
  };
}

function scaleOf(input: Exclude<CalibrationInput, { method: 'known-points' }>, onPlane: (point: XY) => XY): number {
  if (input.method === 'known-length') return input.lengthMm / distance(onPlane(input.ends[0]), onPlane(input.ends[1]));
  const round = fitEllipse(input.rim.map(onPlane));
  return round ? input.diameterMm / (2 * Math.sqrt(round.semiMajor * round.semiMinor)) : Number.NaN;
}
