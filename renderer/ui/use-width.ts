import { type RefObject, useLayoutEffect, useState } from 'react';

/** The width of an element in pixels as the window changes; 0 until it is drawn. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const watched = element.current;
    if (watched === null) return;
    const measure = () => setWidth(watched.clientWidth);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(watched);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
