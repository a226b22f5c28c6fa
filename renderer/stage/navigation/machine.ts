import { distance, midpoint } from '../../../shared-lib/geometry/plane.ts';
import { type ScreenPoint, type Size, screenPoint } from '../../../shared-lib/geometry/spaces.ts';
import { clampView, fitView, panBy, scaleLimits, type View, zoomAbout } from '../../../shared-lib/geometry/viewport.ts';

/** Moving the photo under the stage. Works on the screen, since the photo moves while the hand does. */
export type NavigationState =
  | { readonly name: 'still' }
  | { readonly name: 'panning'; readonly last: ScreenPoint }
  | { readonly name: 'pinching'; readonly a: ScreenPoint; readonly b: ScreenPoint };

export type NavigationEvent =
  | { readonly type: 'grab' | 'drag'; readonly at: ScreenPoint }
  | { readonly type: 'two-fingers' | 'pinch'; readonly a: ScreenPoint; readonly b: ScreenPoint }
  | { readonly type: 'release' }
  | { readonly type: 'zoom'; readonly at: ScreenPoint; readonly factor: number }
  | { readonly type: 'scale'; readonly at: ScreenPoint; readonly to: number }
  | { readonly type: 'pan'; readonly dx: number; readonly dy: number }
  | { readonly type: 'fit' };

export interface Room {
  readonly photo: Size;
  readonly stage: Size;
}

export interface NavigationStep {
  readonly state: NavigationState;
  readonly view: View;
}

export const still: NavigationState = { name: 'still' };

export function navigate(state: NavigationState, event: NavigationEvent, view: View, room: Room): NavigationStep {
  const limits = scaleLimits(room.photo, room.stage);
  const kept = (next: View): View => clampView(next, room.photo, room.stage);
  switch (event.type) {
    case 'grab':
      return { state: { name: 'panning', last: event.at }, view };
    case 'drag': {
      if (state.name !== 'panning') return { state, view };
      const moved = panBy(view, event.at.x - state.last.x, event.at.y - state.last.y);
      return { state: { name: 'panning', last: event.at }, view: kept(moved) };
    }
    case 'two-fingers':
      return { state: { name: 'pinching', a: event.a, b: event.b }, view };
    case 'pinch':
      return state.name === 'pinching'
        ? { state: { name: 'pinching', a: event.a, b: event.b }, view: kept(pinched(state, event, view, limits)) }
        : { state, view };
    case 'release':
      return { state: still, view };
    case 'zoom':
      return { state, view: kept(zoomAbout(view, event.at, event.factor, limits)) };
    case 'scale':
      return { state, view: kept(zoomAbout(view, event.at, event.to / view.scale, limits)) };
    case 'pan':
      return { state, view: kept(panBy(view, event.dx, event.dy)) };
    case 'fit':
      return { state: still, view: fitView(room.photo, room.stage) };
  }
}

type Fingers = { readonly a: ScreenPoint; readonly b: ScreenPoint };

/** What lay between the fingers stays between them. */
function pinched(from: Fingers, to: Fingers, view: View, limits: { least: number; most: number }): View {
  const before = midpoint(from.a, from.b);
  const after = midpoint(to.a, to.b);
  const apart = distance(from.a, from.b);
  const factor = apart < 1 ? 1 : distance(to.a, to.b) / apart;
  const moved = panBy(view, after.x - before.x, after.y - before.y);
  return zoomAbout(moved, screenPoint(after.x, after.y), factor, limits);
}

/** Wheels report lines or pixels, and a touch pad's pinch arrives as a wheel with Ctrl. */
export function wheelFactor(delta: number, unit: 'pixel' | 'line' | 'page', isPinch: boolean): number {
  const pixels = delta * { pixel: 1, line: 33, page: 400 }[unit];
  const bounded = Math.max(-300, Math.min(300, pixels));
  return Math.exp(-bounded * (isPinch ? 0.01 : 0.0017));
}
