import { simplify } from '../../../shared-lib/geometry/simplify.ts';
import { type ImagePoint, type ShapeName, shapePointCounts } from '../../../shared-lib/model/mark.ts';
import { distancePx, type Machine, reachPx, recorded, type Step, shakePx, stay, type ToolView } from './machine.ts';

type Points = readonly ImagePoint[];

export type ManyPointsState =
  | { readonly name: 'idle' }
  /** The first press is held: pulling on draws freehand, letting go sets the first point. */
  | { readonly name: 'pressing'; readonly from: ImagePoint }
  | { readonly name: 'drawing'; readonly trail: Points }
  /** Points are set one by one; the next one follows the hand. */
  | { readonly name: 'placing'; readonly points: Points; readonly next: ImagePoint }
  | { readonly name: 'adding'; readonly points: Points; readonly next: ImagePoint };

const idle: ManyPointsState = { name: 'idle' };
/** How far a freehand trail may be straightened, in screen pixels: less than the width of the drawn line. */
const straightenPx = 1.25;
/** Trail points nearer than this to the last one say nothing new. */
const trailStepPx = 1;

/** A shape of as many points as it takes: clicked one by one, or drawn freehand in one pull. */
export function manyPointsMachine(shape: ShapeName): Machine<ManyPointsState> {
  const { fewest, most } = shapePointCounts[shape];
  const isClosed = shape === 'area';

  function commit(points: Points, otherwise: ManyPointsState, view: ToolView): Step<ManyPointsState> {
    if (points.length < fewest) return stay(otherwise);
    return stay(idle, { type: 'commit', change: { type: 'add', shape, points: recorded(points, view.photo) } });
  }

  function press(
    state: ManyPointsState & { name: 'placing' },
    at: ImagePoint,
    by: keyof typeof reachPx,
    view: ToolView,
  ) {
    const first = state.points[0];
    const last = state.points.at(-1);
    const isRepeat = last !== undefined && distancePx(last, at, view) <= shakePx[by];
    const meetsFirst =
      isClosed && first !== undefined && state.points.length >= fewest && distancePx(first, at, view) <= reachPx[by];
    // A double click presses its own last point again; so does a second Enter without moving the cross-hair.
    if (isRepeat || meetsFirst || state.points.length >= most) return commit(state.points, state, view);
    return stay<ManyPointsState>({ ...state, name: 'adding', next: at });
  }

  return {
    initial: idle,
    step(state, event, view) {
      switch (event.type) {
        case 'down':
          if (state.name === 'placing') return press(state, event.at, event.by, view);
          return stay<ManyPointsState>({ name: 'pressing', from: event.at });
        case 'move':
          if (state.name === 'pressing') {
            if (distancePx(state.from, event.at, view) < shakePx[event.by]) return stay(state);
            return stay<ManyPointsState>({ name: 'drawing', trail: [state.from, event.at] });
          }
          if (state.name === 'drawing')
            return stay<ManyPointsState>({ ...state, trail: longer(state.trail, event.at, view) });
          return stay<ManyPointsState>(state.name === 'idle' ? state : { ...state, next: event.at });
        case 'up':
          if (state.name === 'pressing') {
            return stay<ManyPointsState>({ name: 'placing', points: [state.from], next: event.at });
          }
          if (state.name === 'adding') {
            return stay<ManyPointsState>({ name: 'placing', points: [...state.points, event.at], next: event.at });
          }
          if (state.name === 'drawing') {
            const trail = [...state.trail, event.at];
            return commit(simplify(trail, straightenPx / view.view.scale).slice(0, most), idle, view);
          }
          return stay(state);
        case 'finish':
          return state.name === 'placing' ? commit(state.points, state, view) : stay(state);
        case 'back':
          if (state.name !== 'placing') return stay(state);
          return stay<ManyPointsState>(
            state.points.length > 1 ? { ...state, points: state.points.slice(0, -1) } : idle,
          );
        case 'abort':
          return stay<ManyPointsState>(
            state.name === 'adding' || state.name === 'placing' ? { ...state, name: 'placing' } : idle,
          );
        case 'cancel':
          return stay(idle);
        default:
          return stay(state);
      }
    },
    draft(state) {
      if (state.name === 'idle') return null;
      const points =
        state.name === 'pressing'
          ? [state.from]
          : state.name === 'drawing'
            ? state.trail
            : [...state.points, state.next];
      const focus = points.at(-1);
      return focus ? { shape, points, markId: null, tagAt: null, focus } : null;
    },
  };
}

function longer(trail: Points, at: ImagePoint, view: ToolView): Points {
  const last = trail.at(-1);
  return last && distancePx(last, at, view) < trailStepPx ? trail : [...trail, at];
}
