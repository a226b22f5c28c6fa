import { createStore, useStore } from '../api/store.ts';

export type OpenPanel = 'keys' | 'bench' | 'cards' | 'happened' | null;

const open = createStore<OpenPanel>(null);

/** The side sheet of the window itself; a place may have its own. */
export function useOpenPanel(): OpenPanel {
  return useStore(open);
}

export function openPanel(panel: OpenPanel): void {
  open.set(panel);
}

export function togglePanel(panel: Exclude<OpenPanel, null>): void {
  open.set((now) => (now === panel ? null : panel));
}
