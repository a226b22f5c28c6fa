import type { ImagePoint, ShapeName } from '../../../shared-lib/model/mark.ts';
import { distancePx, type Machine, recorded, type Step, shakePx, stay, type ToolView } from './machine.ts';

export type TwoEndsState =
  | { readonly name: 'idle' }
  /** The first press is still held: letting go elsewhere ends the shape there. */
  | { readonly name: 'pulling'; readonly from: ImagePoint; readonly to: ImagePoint }
  /** The first end was clicked; the other one follows the hand. */
  | { readonly name: 'stretching'; readonly from: ImagePoint; readonly to: ImagePoint }
  | { readonly name: 'ending'; readonly from: ImagePoint; readonly to: ImagePoint };

const idle: TwoEndsState = { name: 'idle' };

/** A shape of two ends: press, pull and let go; or click, and click again. */
export function twoEndsMachine(shape: ShapeName): Machine<TwoEndsState> {
  function finish(from: ImagePoint, to: ImagePoint, otherwise: TwoEndsState, view: ToolView): Step<TwoEndsState> {
    if (distancePx(from, to, view) < shakePx.mouse) return stay(otherwise);
    const points = recorded([from, to], view.photo);
    return stay(idle, { type: 'commit', change: { type: 'add', shape, points } });
  }
  return {
    initial: idle,
    step(state, event, view) {
      switch (event.type) {
        case 'down':
          return stay<TwoEndsState>(
            state.name === 'idle'
              ? { name: 'pulling', from: event.at, to: event.at }
              : { name: 'ending', from: state.from, to: event.at },
          );
        case 'move':
          return stay<TwoEndsState>(state.name === 'idle' ? state : { ...state, to: event.at });
        case 'up': {
          if (state.name === 'idle' || state.name === 'stretching') return stay(state);
          const waiting: TwoEndsState = { name: 'stretching', from: state.from, to: event.at };
          const pulledPx = distancePx(state.from, event.at, view);
          if (state.name === 'pulling' && pulledPx < shakePx[event.by]) return stay(waiting);
          return finish(state.from, event.at, waiting, view);
        }
        case 'finish':
          return state.name === 'stretching' ? finish(state.from, state.to, state, view) : stay(state);
        case 'abort':
          return stay<TwoEndsState>(
            state.name === 'ending' ? { ...state, name: 'stretching' } : state.name === 'pulling' ? idle : state,
          );
        case 'back':
        case 'cancel':
          return stay(idle);
        default:
          return stay(state);
      }
    },
    draft: (state) =>
      state.name === 'idle'
        ? null
        : { shape, points: [state.from, state.to], markId: null, tagAt: null, focus: state.to },
  };
}
