import type { Size } from '../../../shared-lib/geometry/spaces.ts';

/** The rim lets the photo be pulled some way before anything is missing; it is cut down where it would cost too much memory. */
const rimShare = 0.25;
const mostPixels = 12_000_000;

/** How far beyond each edge of the stage photo and marks are drawn, in CSS pixels. */
export function rimOf(stage: Size, pixelRatio: number): { x: number; y: number } {
  const whole = stage.width * stage.height * pixelRatio ** 2;
  const share = Math.max(0, Math.min(rimShare, (Math.sqrt(mostPixels / whole) - 1) / 2));
  return { x: Math.round(stage.width * share), y: Math.round(stage.height * share) };
}
