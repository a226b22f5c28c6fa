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
) {
  const spin = 2 * Math.PI * random();
  const lean = 2 * Math.PI * random();
  const away = 250 + 150 * random();
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
}

const photo = { width: 4000, height: 3000 };
const clickingPx = 1.2;
const toleranceMm = 0.1;
const lensShare = 0.001;

/** One photo with everything in it drawn anew: pose, clicks, the reference's true size, the lens. */
export function simulate(method: CalibrationInput['method'], random: () => number): SimulatedPhoto {
  const off = (): number => toleranceMm * (2 * random() - 1);
  const tilt =
    method === 'known-points'
      ? (50 * Math.PI * random()) / 180
      : method === 'known-circle'
        ? (35 * Math.PI * random()) / 180
        : (10 * Math.PI * random()) / 180;
  const see = randomCamera(random, tilt, photo, 4000);
  const click = (point: XY): XY => {
    const seen = see(point);
    return { x: seen.x + clickingPx * gaussian(random), y: seen.y + clickingPx * gaussian(random) };
  };
  const start = { x: 60 * (random() - 0.5), y: 60 * (random() - 0.5) };
  const trueMm = 12 + 40 * random();
  const way = 2 * Math.PI * random();
  const end = { x: start.x + trueMm * Math.cos(way), y: start.y + trueMm * Math.sin(way) };
  const common = { plane: '', toleranceMm, clickingPx, lensShare, photo };
  const shape: MeasuredShape = {
    shape: 'line',
    points: [click(start), click(end)],
    pointPx: clickingPx,
    offPlane: false,
  };
  return { calibration: reference(), shape, trueMm, lens: 1 + lensShare * gaussian(random) };

  function reference(): CalibrationInput {
    if (method === 'known-length') {
      const turn = 2 * Math.PI * random();
      const half = 40;
      const grown = 1 + off() / (2 * half);
      const tip = { x: half * grown * Math.cos(turn), y: half * grown * Math.sin(turn) };
      return {
        method,
        ends: [click({ x: -tip.x, y: -tip.y }), click(tip)],
        lengthMm: 2 * half,
        tiltDegrees: 10,
        ...common,
      };
    }
    if (method === 'known-circle') {
      const radius = 35 + off() / 2;
      const rim = Array.from({ length: 10 }, (_, k) =>
        click({ x: radius * Math.cos((k * Math.PI) / 5), y: radius * Math.sin((k * Math.PI) / 5) }),
      );
      return { method, rim, diameterMm: 70, ...common };
    }
    const count = 4 + Math.floor(3 * random());
    const places = [
      [-50, -40],
      [50, -40],
      [50, 40],
      [-50, 40],
      [0, -45],
      [0, 45],
      [-55, 0],
    ].slice(0, count);
    const points = places.map(([x = 0, y = 0]) => ({ px: click({ x: x + off(), y: y + off() }), mm: { x, y } }));
    return { method, points, ...common };
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
  const straightCamera = randomCamera(random, (50 * Math.PI * random()) / 180, photo, 4000 / away);
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
    lens: (1 + reference.lensShare * gaussian(random)) * (1 + (reference.referenceShare ?? 0) * gaussian(random)),
  };
}
