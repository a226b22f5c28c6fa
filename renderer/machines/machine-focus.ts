/** The machines on the floor in the order in which they stand, as things that can take the focus. */
function rows(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-machine-row]')];
}

function focusAt(list: readonly HTMLElement[], index: number): void {
  const row = list[index];
  row?.focus();
  row?.closest('li')?.scrollIntoView({ block: 'nearest' });
}

/** The next machine, or the first one when none has the focus. */
export function focusNextMachine(): void {
  const list = rows();
  const now = document.activeElement instanceof HTMLElement ? list.indexOf(document.activeElement) : -1;
  focusAt(list, Math.min(now + 1, list.length - 1));
}

/** The machine before; above the first one stands the search. */
export function focusPreviousMachine(above: () => void): void {
  const list = rows();
  const now = document.activeElement instanceof HTMLElement ? list.indexOf(document.activeElement) : -1;
  if (now > 0) focusAt(list, now - 1);
  else above();
}
