import type { RefObject } from 'react';

const takesKeys = 'button, input, select, textarea, summary, [tabindex="0"]';

/**
 * While it `holds`, Tab that leaves the part comes in again at its other end. A hand may press anywhere.
 *
 * @returns what ends it
 */
export function keepTabInside(part: RefObject<HTMLElement | null>, holds: () => boolean): () => void {
  let tab: 'on' | 'back' | null = null;
  const noteKey = ({ key, shiftKey }: KeyboardEvent) => {
    tab = key === 'Tab' ? (shiftKey ? 'back' : 'on') : null;
  };
  const notePress = () => {
    tab = null;
  };
  const comeIn = ({ target }: FocusEvent) => {
    const inside = part.current;
    if (tab === null || inside === null || inside.contains(target as Node) || !holds()) return;
    const all = [...inside.querySelectorAll<HTMLElement>(takesKeys)].filter(
      (each) => each.tabIndex >= 0 && !each.matches(':disabled'),
    );
    all.at(tab === 'on' ? 0 : -1)?.focus();
  };
  const stop = new AbortController();
  const first = { capture: true, signal: stop.signal };
  window.addEventListener('keydown', noteKey, first);
  window.addEventListener('pointerdown', notePress, first);
  window.addEventListener('focusin', comeIn, first);
  return () => stop.abort();
}
