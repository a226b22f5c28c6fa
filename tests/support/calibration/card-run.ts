import { cardFaces, faceCorners } from '../../../shared-lib/calibration/card/face.ts';
import { findCard } from '../../../shared-lib/calibration/card/find-card.ts';
import type { Size } from '../../../shared-lib/geometry/spaces.ts';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';
import { seeded } from '../../reference/shared-lib/tracing/drawn-surface.ts';
import { type CardView, drawView } from './card-view.ts';

export interface Outcome {
  readonly seed: number;
  readonly view: CardView;
  /** The right face, and no point farther off than a pixel, in a large photo too. */
  readonly isFound: boolean;
  /** Of each point, px. */
  readonly errorsPx: readonly number[];
  readonly findingMs: number;
}

/** Everything a bench does to a photo, drawn alike over the whole range. Blur and noise are for a photo of 2 megapixels. */
export function randomView(photo: Size, random: () => number): CardView {
  const face = cardFaces[random() < 0.5 ? 0 : 1];
  if (!face) throw new Error('no face');
  return {
    photo,
    face,
    tiltDegrees: 50 * random(),
    fill: 0.18 + 0.45 * random(),
    blurPx: (2.5 * random() * photo.width) / 1600,
    noise: 8 * random(),
    shade: random() < 0.6 ? 0.2 + 0.4 * random() : 1,
    barrel: 0.04 * (random() - 0.5),
  };
}

export function tryView(seed: number, photo: Size, background: GreyImage): Outcome {
  const random = seeded(seed);
  const view = randomView(photo, random);
  const { image, truth } = drawView(view, background, random);
  const began = performance.now();
  const found = findCard(image);
  const findingMs = performance.now() - began;
  const { squareMm } = view.face;
  const errorsPx = (found?.points ?? []).map(({ px, mm }) => {
    const at = truth[faceCorners.findIndex(({ x, y }) => x * squareMm === mm.x && y * squareMm === mm.y)];
    return at ? Math.hypot(at.x - px.x, at.y - px.y) : Number.POSITIVE_INFINITY;
  });
  const isFound = found?.face === view.face.name && errorsPx.every((error) => error < 1);
  return { seed, view, isFound, errorsPx, findingMs };
}

export interface Summary {
  readonly foundPercent: number;
  readonly medianPx: number;
  readonly rmsPx: number;
  readonly within95Px: number;
  readonly worstPx: number;
  readonly medianMs: number;
  readonly worstMs: number;
}

export function summarise(outcomes: readonly Outcome[]): Summary {
  const errors = outcomes.flatMap(({ isFound, errorsPx }) => (isFound ? errorsPx : [])).sort((a, b) => a - b);
  const times = outcomes.map(({ findingMs }) => findingMs).sort((a, b) => a - b);
  return {
    foundPercent: (100 * outcomes.filter(({ isFound }) => isFound).length) / outcomes.length,
    medianPx: errors[errors.length >> 1] ?? Number.NaN,
    rmsPx: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length),
    within95Px: errors[Math.floor(0.95 * errors.length)] ?? Number.NaN,
    worstPx: errors.at(-1) ?? Number.NaN,
    medianMs: times[times.length >> 1] ?? Number.NaN,
    worstMs: times.at(-1) ?? Number.NaN,
  };
}
