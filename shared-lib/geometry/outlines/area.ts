import type { OutlineOf } from './outline.ts';

/** Round the area, never filled. */
export const areaOutline: OutlineOf = (points) => (points.length < 2 ? [] : [{ points, closed: points.length > 2 }]);
