import { createStore, useStore } from '../api/store.ts';
import { go } from './place.ts';

/** What is searched for on the floor. It outlives a look at a machine, so that one comes back to the same list. */
const words = createStore('');
/** Counts the wishes to type into the search; the floor takes the focus there when it rises. */
const wishes = createStore(0);

export function useSearchWords(): string {
  return useStore(words);
}

export function searchFor(next: string): void {
  words.set(next);
}

export function useSearchWish(): number {
  return useStore(wishes);
}

export function openSearch(): void {
  go({ name: 'floor' });
  wishes.set((count) => count + 1);
}
