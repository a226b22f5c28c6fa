import { useCallback, useRef } from 'react';

/**
 * The focus for a control that comes back once something opened in its place is closed. `ask` before closing; the control
 * takes it when it is drawn, at once or with the record's next answer.
 */
export function useFocusBack() {
  const isAsked = useRef(false);
  const ask = useCallback(() => {
    isAsked.current = true;
  }, []);
  const ref = useCallback((control: HTMLElement | null) => {
    if (control === null || !isAsked.current) return;
    isAsked.current = false;
    // A hand that has gone on meanwhile is not fetched back.
    if (document.activeElement === document.body) control.focus();
  }, []);
  return { ask, ref };
}
