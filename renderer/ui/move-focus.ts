import type { KeyboardEvent } from 'react';

interface ArrowKeys {
  readonly back: 'ArrowLeft' | 'ArrowUp';
  readonly on: 'ArrowRight' | 'ArrowDown';
}

export const alongRow: ArrowKeys = { back: 'ArrowLeft', on: 'ArrowRight' };
export const alongColumn: ArrowKeys = { back: 'ArrowUp', on: 'ArrowDown' };

/**
 * Arrow keys go from one of many to its neighbour, so that Tab can pass them as one.
 *
 * @returns which one has the focus now, counted from 0; null where the key means something else
 */
export function moveFocus(event: KeyboardEvent<HTMLElement>, { back, on }: ArrowKeys, those = 'button'): number | null {
  if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return null;
  if (event.key !== back && event.key !== on) return null;
  const all = [...event.currentTarget.querySelectorAll<HTMLElement>(those)];
  const now = all.indexOf(document.activeElement as HTMLElement);
  const next = now + (event.key === on ? 1 : -1);
  const there = now < 0 ? undefined : all[next];
  if (there === undefined) return null;
  event.preventDefault();
  there.focus();
  return next;
}
