/**
 * The spaces a point can be in. An ImagePoint (shared-lib/model/mark.ts) is in pixels of the upright original, pixel
 * centres at whole numbers, so the photo's own edge lies at -0.5. A ScreenPoint is in CSS pixels from the stage's
 * upper left corner. Plane geometry that holds in either space takes an XY.
 */
declare const screenSpace: unique symbol;

export interface XY {
  readonly x: number;
  readonly y: number;
}

export type ScreenPoint = XY & { readonly [screenSpace]: true };

/** Accepts an ImagePoint and refuses a ScreenPoint: the two would otherwise fit each other. */
export type PhotoPoint = XY & { readonly [screenSpace]?: never };

/** Names the space of two numbers; the only place where a ScreenPoint is made. */
export function screenPoint(x: number, y: number): ScreenPoint {
  return { x, y } as ScreenPoint;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
