import { simplify } from '../../../../shared-lib/geometry/simplify.ts';
import type { ImagePoint } from '../../../../shared-lib/model/mark.ts';
import { distancePx, type Machine, recorded, type Step, shakePx, stay, type ToolView } from '../machine.ts';

type Points = readonly ImagePoint[];

export type GrowState =
  | { readonly name: 'idle' }
  /** The press is held: running on draws a line over the patch, letting go is a tap inside it. */
  | { readonly name: 'pressing'; readonly from: ImagePoint }
  | { readonly name: 'running'; readonly trail: Points };

const idle: GrowState = { name: 'idle' };
/** A line over a patch needs no more points than this, in screen pixels. */
const straightenPx = 2;

/** One tap inside a patch, or one rough pull over it. */
export const growMachine: Machine<GrowState> = {
  initial: idle,
  step(state, event, view) {
    switch (event.type) {
      case 'down':
        return stay<GrowState>({ name: 'pressing', from: event.at });
      case 'move':
        if (state.name === 'running') return stay<GrowState>({ ...state, trail: [...state.trail, event.at] });
        if (state.name === 'idle' || distancePx(state.from, event.at, view) < shakePx[event.by]) return stay(state);
        return stay<GrowState>({ name: 'running', trail: [state.from, event.at] });
      case 'up':
        if (state.name === 'pressing') return grow([state.from], view);
        return state.name === 'running' ? grow([...state.trail, event.at], view) : stay(state);
      case 'abort':
      case 'back':
      case 'cancel':
        return stay(idle);
      default:
        return stay(state);
    }
  },
  draft(state) {
    if (state.name === 'idle') return null;
    const points = state.name === 'pressing' ? [state.from] : state.trail;
    const focus = points.at(-1);
    return focus ? { shape: points.length > 1 ? 'path' : 'point', points, markId: null, tagAt: null, focus } : null;
  },
};

function grow(trail: Points, view: ToolView): Step<GrowState> {
  const points = trail.length > 1 ? simplify(trail, straightenPx / view.view.scale) : trail;
  return stay(idle, { type: 'commit', change: { type: 'grow', points: recorded(points, view.photo) } });
}
