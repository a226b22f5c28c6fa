import { simplify } from '../../../../shared-lib/geometry/simplify.ts';
import type { ImagePoint } from '../../../../shared-lib/model/mark.ts';
import { distancePx, type Machine, recorded, type Step, shakePx, stay, type ToolView } from '../machine.ts';

type Points = readonly ImagePoint[];

export type TraceState =
  | { readonly name: 'idle' }
  /** The first press is held: running on draws a rough line, letting go sets the start. */
  | { readonly name: 'pressing'; readonly from: ImagePoint }
  | { readonly name: 'scribbling'; readonly trail: Points }
  /** The start is set; the end follows the hand. */
  | { readonly name: 'waiting' | 'ending'; readonly from: ImagePoint; readonly to: ImagePoint };

const idle: TraceState = { name: 'idle' };
/** A rough line needs no more points than this, in screen pixels. */
const straightenPx = 2;

/** Two taps at the ends of a crack, or one rough pull along it. */
export const traceMachine: Machine<TraceState> = {
  initial: idle,
  step(state, event, view) {
    switch (event.type) {
      case 'down':
        return stay<TraceState>(
          state.name === 'waiting' ? { ...state, name: 'ending', to: event.at } : { name: 'pressing', from: event.at },
        );
      case 'move':
        if (state.name === 'pressing') {
          if (distancePx(state.from, event.at, view) < shakePx[event.by]) return stay(state);
          return stay<TraceState>({ name: 'scribbling', trail: [state.from, event.at] });
        }
        if (state.name === 'scribbling') return stay<TraceState>({ ...state, trail: [...state.trail, event.at] });
        return stay<TraceState>(state.name === 'idle' ? state : { ...state, to: event.at });
      case 'up':
        if (state.name === 'pressing') return stay<TraceState>({ name: 'waiting', from: state.from, to: event.at });
        if (state.name === 'ending') return follow(state, event.at, view);
        return state.name === 'scribbling' ? along([...state.trail, event.at], view) : stay(state);
      case 'finish':
        return state.name === 'waiting' ? follow(state, state.to, view) : stay(state);
      case 'abort':
        return stay<TraceState>(
          state.name === 'ending' ? { ...state, name: 'waiting' } : state.name === 'waiting' ? state : idle,
        );
      case 'back':
      case 'cancel':
        return stay(idle);
      default:
        return stay(state);
    }
  },
  draft(state) {
    if (state.name === 'idle') return null;
    const points =
      state.name === 'pressing' ? [state.from] : state.name === 'scribbling' ? state.trail : [state.from, state.to];
    const focus = points.at(-1);
    return focus ? { shape: 'path', points, markId: null, tagAt: null, focus } : null;
  },
};

/** Both taps on one spot are a slip of the hand, no crack. */
function follow(state: TraceState & { name: 'waiting' | 'ending' }, to: ImagePoint, view: ToolView): Step<TraceState> {
  if (distancePx(state.from, to, view) < shakePx.mouse) return stay<TraceState>({ ...state, name: 'waiting', to });
  return stay(idle, { type: 'commit', change: { type: 'trace', points: recorded([state.from, to], view.photo) } });
}

function along(trail: Points, view: ToolView): Step<TraceState> {
  const scribble = recorded(simplify(trail, straightenPx / view.view.scale), view.photo);
  const [first, last] = [scribble[0], scribble.at(-1)];
  if (!first || !last || distancePx(first, last, view) < shakePx.mouse) return stay(idle);
  return stay(idle, { type: 'commit', change: { type: 'trace', points: [first, last], scribble } });
}
