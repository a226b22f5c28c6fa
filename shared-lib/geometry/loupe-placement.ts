import { type ScreenPoint, type Size, screenPoint } from './spaces.ts';

/** Between the finger and the loupe's rim, so that a thumb covers none of it. */
const clearOfFingerPx = 44;
const edgePx = 8;

/** The middle of a loupe of this radius: above the finger, else beside it, and always wholly on the stage. */
export function placeLoupe(finger: ScreenPoint, stage: Size, radiusPx: number): ScreenPoint {
  const away = radiusPx + clearOfFingerPx;
  const least = radiusPx + edgePx;
  const within = (at: number, length: number) => Math.min(Math.max(at, least), Math.max(least, length - least));
  if (finger.y - away >= least) return screenPoint(within(finger.x, stage.width), finger.y - away);
  const side = finger.x + away <= stage.width - least ? finger.x + away : finger.x - away;
  return screenPoint(within(side, stage.width), within(finger.y, stage.height));
}
