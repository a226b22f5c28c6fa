import { useEffect, useEffectEvent } from 'react';

/** Whether a key is being typed into something and means a letter, not a command. */
function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.closest('input:not([type=radio], [type=checkbox]), textarea, select, [contenteditable]') !== null
  );
}

/** Answers plain letters anywhere in the window but where text is typed. `answer` says whether the letter was meant for it. */
export function useLetterKeys(answer: (letter: string) => boolean): void {
  const handle = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey || isTyping(event.target)) return;
    if (event.key.length === 1 && answer(event.key.toUpperCase())) event.preventDefault();
  });
  useEffect(() => {
    const listener = (event: KeyboardEvent) => handle(event);
    document.addEventListener('keydown', listener);
    return () => document.removeEventListener('keydown', listener);
  }, []);
}
