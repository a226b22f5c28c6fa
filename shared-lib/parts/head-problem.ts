import type { Layout } from '../model/layout.ts';
import { headCount, headOfCylinder } from './engine-counts.ts';
import { componentsAlong } from './find-component.ts';
import type { LocationPath } from './location.ts';

/** What is wrong with a cylinder that does not stand under the head it is placed in; null where nothing is. */
export function headProblem(path: LocationPath, layout: Layout): string | null {
  const components = componentsAlong(path);
  const headAt = components.findIndex((component) => component.code === 'HD' || component.code === 'HG');
  const head = path[headAt]?.indices[0];
  const part = components[headAt + 1];
  const cylinder = path[headAt + 1]?.indices[0];
  if (headAt < 0 || typeof head !== 'number' || typeof cylinder !== 'number') return null;
  if (part?.counting?.by !== 'cylinder' || headCount(layout) === 1) return null;
  const right = headOfCylinder(cylinder, layout);
  return right === null || right === head ? null : `cylinder ${cylinder} does not stand under cylinder head ${head}`;
}
