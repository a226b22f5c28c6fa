import { type Box, type PhotoPoint, type ScreenPoint, type Size, screenPoint, type XY } from './spaces.ts';

/** Where the photo lies on the stage: screen = scale x image + (x, y). `scale` is in CSS pixels per image pixel. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface ScaleLimits {
  readonly least: number;
  readonly most: number;
}

/** The closest look: one image pixel this many screen pixels wide. Beyond it nothing more can be seen. */
const closestLook = 16;

export function toScreen(view: View, point: PhotoPoint): ScreenPoint {
  return screenPoint(view.scale * point.x + view.x, view.scale * point.y + view.y);
}

export function toImage(view: View, point: ScreenPoint): { x: number; y: number } {
  return { x: (point.x - view.x) / view.scale, y: (point.y - view.y) / view.scale };
}

/** The whole photo, as large as the stage allows, centred. */
export function fitView(photo: Size, stage: Size): View {
  const scale = Math.min(stage.width / photo.width, stage.height / photo.height, closestLook);
  return centredOn({ x: (photo.width - 1) / 2, y: (photo.height - 1) / 2 }, scale, stage);
}

export function centredOn(point: PhotoPoint, scale: number, stage: Size): View {
  return { scale, x: stage.width / 2 - scale * point.x, y: stage.height / 2 - scale * point.y };
}

export function scaleLimits(photo: Size, stage: Size): ScaleLimits {
  const fit = fitView(photo, stage).scale;
  return { least: fit, most: Math.max(closestLook, fit) };
}

/** Scales by `factor`, as far as the limits allow; what lies under `anchor` stays under it. */
export function zoomAbout(view: View, anchor: ScreenPoint, factor: number, limits: ScaleLimits): View {
  const scale = Math.min(limits.most, Math.max(limits.least, view.scale * factor));
  const ratio = scale / view.scale;
  return { scale, x: anchor.x - ratio * (anchor.x - view.x), y: anchor.y - ratio * (anchor.y - view.y) };
}

export function panBy(view: View, dx: number, dy: number): View {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/**
 * Keeps the stage's middle on the photo; at its smallest the photo is whole and centred. Never undoes what zooming in
 * about a spot of the photo has done, since a photo that grows about a spot of its own still covers what it covered.
 */
export function clampView(view: View, photo: Size, stage: Size): View {
  const fit = fitView(photo, stage);
  if (view.scale <= fit.scale * (1 + 1e-9)) return fit;
  return {
    scale: view.scale,
    x: clampAxis(view.x, view.scale, photo.width, stage.width),
    y: clampAxis(view.y, view.scale, photo.height, stage.height),
  };
}

function clampAxis(offset: number, scale: number, photoLength: number, stageLength: number): number {
  const middle = stageLength / 2;
  return Math.min(middle + scale / 2, Math.max(middle - scale * (photoLength - 0.5), offset));
}

/** The part of the photo that the stage shows, in image pixels, within the photo's own edges. */
export function visiblePart(view: View, photo: Size, stage: Size): Box {
  const first = toImage(view, screenPoint(0, 0));
  const last = toImage(view, screenPoint(stage.width, stage.height));
  return {
    left: Math.max(-0.5, first.x),
    top: Math.max(-0.5, first.y),
    right: Math.min(photo.width - 0.5, last.x),
    bottom: Math.min(photo.height - 0.5, last.y),
  };
}

/** Moves the view just so far that the point stands at least `marginPx` inside the stage. */
export function bringIntoView(view: View, point: PhotoPoint, stage: Size, marginPx: number): View {
  const at = toScreen(view, point);
  return panBy(view, pull(at.x, stage.width, marginPx), pull(at.y, stage.height, marginPx));
}

function pull(at: number, length: number, marginPx: number): number {
  const margin = Math.min(marginPx, length / 2);
  if (at < margin) return margin - at;
  if (at > length - margin) return length - margin - at;
  return 0;
}

export function sameView(a: View, b: View): boolean {
  return a.scale === b.scale && a.x === b.x && a.y === b.y;
}

/** The nearest point that is still on the photo. */
export function insidePhoto(point: XY, photo: Size): { x: number; y: number } {
  return {
    x: Math.min(photo.width - 0.5, Math.max(-0.5, point.x)),
    y: Math.min(photo.height - 0.5, Math.max(-0.5, point.y)),
  };
}
