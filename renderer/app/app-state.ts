import { createContext, useContext } from 'react';
import type { AppState } from '../../shared-lib/contract/shop.ts';

export const AppStateContext = createContext<AppState | null>(null);

/** The shop and who works in it; every place stands inside it. */
export function useAppState(): AppState {
  const state = useContext(AppStateContext);
  if (state === null) throw new Error('A place was drawn outside the shop.');
  return state;
}

export function usePersonName(): string | null {
  const { people, personId } = useAppState();
  return people.find(({ id }) => id === personId)?.name ?? null;
}
