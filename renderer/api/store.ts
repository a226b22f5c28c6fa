import { useSyncExternalStore } from 'react';

/** A value outside React that components can watch. */
export interface Store<T> {
  get(): T;
  set(next: T | ((now: T) => T)): void;
  watch(listener: () => void): () => void;
}

export function createStore<T>(first: T): Store<T> {
  let value = first;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    set: (next) => {
      const settled = typeof next === 'function' ? (next as (now: T) => T)(value) : next;
      if (Object.is(settled, value)) return;
      value = settled;
      for (const listener of listeners) listener();
    },
    watch: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export function useStore<T>(store: Store<T>): T {
  return useSyncExternalStore(store.watch, store.get, store.get);
}
