import type { ImagePoint } from '../../../../shared-lib/model/mark.ts';
import { type Machine, recorded, stay } from '../machine.ts';

export type PointState = { readonly name: 'idle' } | { readonly name: 'placing'; readonly at: ImagePoint };

const idle: PointState = { name: 'idle' };

/** Press, slide to the exact spot, let go. */
export const pointMachine: Machine<PointState> = {
  initial: idle,
  step(state, event, view) {
    switch (event.type) {
      case 'down':
        return stay<PointState>({ name: 'placing', at: event.at });
      case 'move':
        return stay<PointState>(state.name === 'placing' ? { name: 'placing', at: event.at } : state);
      case 'up': {
        if (state.name === 'idle') return stay(state);
        const points = recorded([event.at], view.photo);
        return stay(idle, { type: 'commit', change: { type: 'add', shape: 'point', points } });
      }
      case 'abort':
      case 'cancel':
        return stay(idle);
      default:
        return stay(state);
    }
  },
  draft: (state) =>
    state.name === 'idle' ? null : { shape: 'point', points: [state.at], markId: null, tagAt: null, focus: state.at },
};
