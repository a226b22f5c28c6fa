import { type RefObject, useEffect, useState } from 'react';

/** Whether an element is seen, or would be after scrolling by one screen. */
export function useNear(element: RefObject<HTMLElement | null>): boolean {
  const [isNear, setIsNear] = useState(false);
  useEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const observer = new IntersectionObserver((entries) => setIsNear(entries.at(-1)?.isIntersecting ?? false), {
      scrollMargin: '100%',
    });
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return isNear;
}
