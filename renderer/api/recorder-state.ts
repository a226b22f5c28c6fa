import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import { createStore, useStore } from './store.ts';

export type RecorderState = Omit<Extract<RecorderEvent, { event: 'recorder' }>, 'event'>;

const state = createStore<RecorderState>({ state: 'running', atMs: 0, reason: null });

export function noteRecorder(next: RecorderState): void {
  state.set(next);
}

/** Whether the recorder runs, has just been started again, or is gone. */
export function useRecorderState(): RecorderState {
  return useStore(state);
}

/** The mechanic has read the notice of the restart. */
export function readRecorderNotice(): void {
  state.set((now) => (now.state === 'restarted' ? { state: 'running', atMs: now.atMs, reason: null } : now));
}
