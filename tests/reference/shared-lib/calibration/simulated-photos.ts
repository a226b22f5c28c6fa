import { cardCalibration, paperMm, usualBendU } from '../../../../shared-lib/calibration/card/card-calibration.ts';
import { cardFaces, faceCorners } from '../../../../shared-lib/calibration/card/face.ts';
import type { CalibrationInput, MeasuredShape } from '../../../../shared-lib/calibration/input.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import { gaussian } from '../tracing/drawn-surface.ts';

/** A pinhole camera over the plane z = 0; the plane's origin lies near the middle of the photo. */
export function randomCamera(
  random: () => number,
  tiltRadians: number,
  photo: { width: number; height: number },
  focalPx: number,
  farther = 1,
) {
  const spin = 2 * Math.PI * random();
  const lean = 2 * Math.PI * random();
  const away = (250 + 150 * random()) * farther;
  const [c, s] = [Math.cos(tiltRadians), Math.sin(tiltRadians)];
  return ({ x, y }: XY): XY => {
    // Turn in the plane so that the tilt's axis lies along x, tilt, turn back by another angle.
    const u = x * Math.cos(lean) + y * Math.sin(lean);
    const v = y * Math.cos(lean) - x * Math.sin(lean);
    const [px, py, pz] = [u, v * c, away + v * s];
    return {
      x: photo.width / 2 + (focalPx * (px * Math.cos(spin) - py * Math.sin(spin))) / pz,
      y: photo.height / 2 + (focalPx * (px * Math.sin(spin) + py * Math.cos(spin))) / pz,
    };
  };
}

export interface SimulatedPhoto {
  readonly calibration: CalibrationInput;
  readonly shape: MeasuredShape;
  readonly trueMm: number;
  /** What the lens does to this photo's lengths. */
  readonly lens: number;
  readonly tiltDegrees: number;
  /** The tilts drawn reach from nothing to this. */
  readonly mostTiltDegrees: number;
  /** From the middle of the reference to the middle of the mark, in half lengths or radii of the reference. */
  readonly reaches: number;
}

const photo = { width: 4000, height: 3000 };
const lensShare = 0.001;

/** Between two numbers, every ratio alike. */
const between = (random: () => number, low: number, high: number): number => low * (high / low) ** random();

const mostTilts = { 'known-length': 10, 'known-circle': 60, 'known-points': 50 } as const;

/**
 * One photo with everything in it drawn anew, each part as the budget states it: pose, focal length, clicks, the
 * reference's true size, the lens. Reference and mark are of any size and lie anywhere in the photo.
 */
export function simulate(method: CalibrationInput['method'], random: () => number): SimulatedPhoto {
  const clickingPx = between(random, 0.6, 2);
  const toleranceMm = between(random, 0.03, 0.5);
  const off = (): number => toleranceMm * (2 * random() - 1);
  const mostTiltDegrees = mostTilts[method];
  const tiltDegrees = mostTiltDegrees * random();
  const focalSides = between(random, 0.7, 1.4);
  // A longer lens takes the same picture from farther off.
  const see = randomCamera(random, (tiltDegrees * Math.PI) / 180, photo, focalSides * photo.width, focalSides);
  let isWhole = true;
  const click = (point: XY): XY => {
    const seen = see(point);
    const at = { x: seen.x + clickingPx * gaussian(random), y: seen.y + clickingPx * gaussian(random) };
    isWhole &&= at.x >= 0 && at.y >= 0 && at.x <= photo.width - 1 && at.y <= photo.height - 1;
    return at;
  };
  const anywhere = (): XY => ({ x: 200 * (random() - 0.5), y: 200 * (random() - 0.5) });
  const trueMm = between(random, 8, 80);
  const middle = anywhere();
  const reach = between(random, 10, 50);
  // Every other mark lies inside the reference or at its rim.
  const beside = (): number => 1.4 * reach * (random() - 0.5);
  const markAt = random() < 0.5 ? { x: middle.x + beside(), y: middle.y + beside() } : anywhere();
  const way = 2 * Math.PI * random();
  const half = { x: (trueMm / 2) * Math.cos(way), y: (trueMm / 2) * Math.sin(way) };
  const common = { plane: '', toleranceMm, clickingPx, lensShare, photo };
  const calibration = reference();
  const points = [
    click({ x: markAt.x - half.x, y: markAt.y - half.y }),
    click({ x: markAt.x + half.x, y: markAt.y + half.y }),
  ];
  // A reference or a mark that is not whole in the photo is photographed anew.
  if (!isWhole) return simulate(method, random);
  return {
    calibration,
    shape: { shape: 'line', points, pointPx: clickingPx, offPlane: false },
    trueMm,
    lens: 1 + lensShare * gaussian(random),
    tiltDegrees,
    mostTiltDegrees,
    reaches: Math.hypot(markAt.x - middle.x, markAt.y - middle.y) / reach,
  };

  function reference(): CalibrationInput {
    const clickAt = ({ x, y }: XY): XY => click({ x: middle.x + x, y: middle.y + y });
    if (method === 'known-length') {
      const turn = 2 * Math.PI * random();
      const grown = reach + off() / 2;
      const tip = { x: grown * Math.cos(turn), y: grown * Math.sin(turn) };
      const ends: [XY, XY] = [clickAt({ x: -tip.x, y: -tip.y }), clickAt(tip)];
      return { method, ends, lengthMm: 2 * reach, tiltDegrees: mostTiltDegrees, ...common };
    }
    if (method === 'known-circle') {
      const radius = reach + off() / 2;
      const count = 6 + Math.floor(9 * random());
      const rim = Array.from({ length: count }, (_, k) => {
        const turn = (2 * Math.PI * k) / count;
        return clickAt({ x: radius * Math.cos(turn), y: radius * Math.sin(turn) });
      });
      return { method, rim, diameterMm: 2 * reach, ...common };
    }
    const count = 4 + Math.floor(4 * random());
    const places = [
      [-1, -0.8],
      [1, -0.8],
      [1, 0.8],
      [-1, 0.8],
      [0, -0.9],
      [0, 0.9],
      [-1.1, 0],
    ].slice(0, count);
    const list = places.map(([u = 0, v = 0]) => {
      const mm = { x: reach * u, y: reach * v };
      return { px: clickAt({ x: mm.x + off(), y: mm.y + off() }), mm };
    });
    return { method, points: list, ...common };
  }
}

/**
 * One photo of a calibration card with a bent lens, everything in it drawn anew: pose, lens, where the crossings are found,
 * how true the card was printed, where beside it something is measured, how it is clicked.
 */
export function simulateCard(random: () => number, clickingPx = 1.2): SimulatedPhoto {
  const face = cardFaces[random() < 0.5 ? 0 : 1];
  if (!face) throw new Error('no face');
  const away = (face.squareMm / 16) * (1 + 0.6 * random());
  const mostTiltDegrees = 50;
  const tiltDegrees = mostTiltDegrees * random();
  const straightCamera = randomCamera(random, (Math.PI * tiltDegrees) / 180, photo, 4000 / away);
  // Drawn by the polynomial model, while the calibration fits the division model.
  const bend = usualBendU * gaussian(random);
  const middle = { x: (photo.width - 1) / 2, y: (photo.height - 1) / 2 };
  const radiusPx = Math.hypot(photo.width, photo.height) / 2;
  const see = (point: XY): XY => {
    const { x, y } = straightCamera(point);
    const [dx, dy] = [x - middle.x, y - middle.y];
    const by = 1 + (bend * (dx * dx + dy * dy)) / radiusPx ** 2;
    return { x: middle.x + dx * by, y: middle.y + dy * by };
  };
  const foundPx = 0.08;
  const shift = { x: face.squareMm * (4.5 + 3 * (random() - 0.5)), y: face.squareMm * (3 + 3 * (random() - 0.5)) };
  const found = faceCorners.map(({ x, y }) => {
    const mm = { x: x * face.squareMm, y: y * face.squareMm };
    const off = (): number => paperMm * (2 * random() - 1);
    const seen = see({ x: mm.x - shift.x + off(), y: mm.y - shift.y + off() });
    return { px: { x: seen.x + foundPx * gaussian(random), y: seen.y + foundPx * gaussian(random) }, mm };
  });
  // A card that is not whole in the photo is photographed anew.
  const isWhole = found.every(({ px }) => px.x > 0 && px.y > 0 && px.x < photo.width - 1 && px.y < photo.height - 1);
  if (!isWhole) return simulateCard(random, clickingPx);
  const reference = cardCalibration({ points: found, face: face.name }, photo, { barMm: 150, plane: '' });
  const start = { x: 12 * face.squareMm * (random() - 0.5), y: 12 * face.squareMm * (random() - 0.5) };
  const length = (1 + 5 * random()) * face.squareMm;
  const way = 2 * Math.PI * random();
  const click = (point: XY): XY => {
    const seen = see(point);
    return { x: seen.x + clickingPx * gaussian(random), y: seen.y + clickingPx * gaussian(random) };
  };
  const points = [click(start), click({ x: start.x + length * Math.cos(way), y: start.y + length * Math.sin(way) })];
  return {
    calibration: reference,
    shape: { shape: 'line', points, pointPx: clickingPx, offPlane: false },
    trueMm: length,
    tiltDegrees,
    mostTiltDegrees,
    reaches: Math.hypot(start.x, start.y) / (5 * face.squareMm),
    lens: (1 + reference.lensShare * gaussian(random)) * (1 + (reference.referenceShare ?? 0) * gaussian(random)),
  };
}
