import { distance } from '../../../shared-lib/geometry/plane.ts';
import type { Box, Size } from '../../../shared-lib/geometry/spaces.ts';
import { insidePhoto, toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { ImagePoint, Mark, ShapeName } from '../../../shared-lib/model/mark.ts';

/** `keyboard` is the cross-hair moved by arrow keys; its press and release come together. */
export type PointerKind = 'mouse' | 'touch' | 'pen' | 'keyboard';

/** What a hand does on the photo, in pixels of the upright original. */
export type StageEvent =
  | {
      readonly type: 'down';
      readonly at: ImagePoint;
      readonly by: PointerKind /** A second press at once, on the same spot. */;
      readonly again: boolean;
    }
  | { readonly type: 'move' | 'up'; readonly at: ImagePoint; readonly by: PointerKind }
  /** The press did not count: a second finger came down, or the system took the pointer away. */
  | { readonly type: 'abort' }
  /** Escape: the whole draft is dropped. */
  | { readonly type: 'cancel' }
  | { readonly type: 'finish' | 'back' | 'delete' }
  | { readonly type: 'next-mark' | 'previous-mark' | 'next-vertex' | 'previous-vertex' };

/** One gesture's outcome, and so one step of undo. */
export type MarkChange =
  | { readonly type: 'add'; readonly shape: ShapeName; readonly points: ImagePoint[] }
  | { readonly type: 'change'; readonly markId: string; readonly points?: ImagePoint[]; readonly tagAt?: ImagePoint }
  | { readonly type: 'remove'; readonly markId: string }
  /** Two ends, or a rough line: the recorder follows the crack between them. */
  | { readonly type: 'trace'; readonly points: ImagePoint[]; readonly scribble?: ImagePoint[] }
  /** A spot, or a line over a patch: the recorder finds its outline. */
  | { readonly type: 'grow'; readonly points: ImagePoint[] }
  /** `points`: start, way points, end. */
  | { readonly type: 'retrace'; readonly markId: string; readonly points: ImagePoint[] };

export type Effect =
  | { readonly type: 'commit'; readonly change: MarkChange }
  | { readonly type: 'pick'; readonly markId: string | null }
  /** The press met nothing to work on: the same pointer moves the photo instead. */
  | { readonly type: 'pan' }
  | { readonly type: 'fit' }
  /** The cross-hair goes there, and the view follows. */
  | { readonly type: 'look-at'; readonly at: ImagePoint };

/** What a tool may know of the stage. */
export interface ToolView {
  readonly view: View;
  readonly photo: Size;
  readonly marks: readonly Mark[];
  readonly picked: string | null;
  /** Where the stamped tags hang, in image pixels. */
  readonly tagBoxes: readonly { readonly markId: string; readonly box: Box }[];
}

/** What the overlay shows of a gesture that is not finished. */
export interface Draft {
  readonly shape: ShapeName;
  readonly points: readonly ImagePoint[];
  /** Where rings are drawn instead of on every point: the way points of a trace. */
  readonly handles?: readonly ImagePoint[];
  /** The mark that is being changed; null for a new one. */
  readonly markId: string | null;
  /** Set while the tag itself is being moved. */
  readonly tagAt: ImagePoint | null;
  /** The spot under the hand, which the loupe magnifies. */
  readonly focus: ImagePoint;
}

export interface Step<S> {
  readonly state: S;
  readonly effects: readonly Effect[];
}

export interface Machine<S extends { readonly name: string }> {
  readonly initial: S;
  step(state: S, event: StageEvent, view: ToolView): Step<S>;
  draft(state: S, view: ToolView): Draft | null;
  /** The point of the picked mark that Delete would take. */
  activeVertex?(state: S): number | null;
}

/** A machine together with where it stands; each event gives the next one. */
export interface Session {
  readonly stateName: string;
  readonly activeVertex: number | null;
  step(event: StageEvent, view: ToolView): { readonly session: Session; readonly effects: readonly Effect[] };
  draft(view: ToolView): Draft | null;
}

export function startSession<S extends { readonly name: string }>(
  machine: Machine<S>,
  state = machine.initial,
): Session {
  return {
    stateName: state.name,
    activeVertex: machine.activeVertex?.(state) ?? null,
    step(event, view) {
      const next = machine.step(state, event, view);
      return { session: next.state === state ? this : startSession(machine, next.state), effects: next.effects };
    },
    draft: (view) => machine.draft(state, view),
  };
}

export function stay<S>(state: S, ...effects: Effect[]): Step<S> {
  return { state, effects };
}

/** How far a hand may shake, in screen pixels, before a press counts as a drag. */
export const shakePx: Record<PointerKind, number> = { mouse: 4, pen: 6, touch: 10, keyboard: 0.5 };
/** How near a hand must come, in screen pixels, to meet something. */
export const reachPx: Record<PointerKind, number> = { mouse: 8, pen: 10, touch: 22, keyboard: 8 };

export function distancePx(a: ImagePoint, b: ImagePoint, { view }: ToolView): number {
  return distance(toScreen(view, a), toScreen(view, b));
}

/** Points as they are recorded: on the photo, to a hundredth of a pixel. */
export function recorded(points: readonly ImagePoint[], photo: Size): ImagePoint[] {
  return points.map((point) => {
    const { x, y } = insidePhoto(point, photo);
    return { x: Math.round(x * 100) / 100, y: Math.round(y * 100) / 100 };
  });
}
