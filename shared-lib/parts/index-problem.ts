import type { Layout } from '../model/layout.ts';
import type { Component, Counting } from './component.ts';
import { cylinderPlaces } from './cylinder-places.ts';
import { headCount, mainCount } from './engine-counts.ts';
import { lineWords, standingFunctions } from './function-words.ts';
import type { LocationIndex, LocationNode } from './location.ts';

const corners = ['L', 'R', 'FL', 'FR', 'RL', 'RR'];
const shells = ['U', 'LO'];
const mostRings = 8;
const mostOfAnything = 9999;

type Problem = string | null;

function numberProblem(index: LocationIndex, most: number, what: string): Problem {
  if (typeof index !== 'number') return `'${index}' is not a number: ${what}s are counted`;
  if (index < 1) return `${what}s are counted from 1`;
  if (index > most) return `there is no ${what} ${index}, there ${most === 1 ? 'is' : 'are'} ${most}`;
  return null;
}

function cylinderProblem(index: LocationIndex, layout: Layout): Problem {
  const numbers = cylinderPlaces(layout).map((place) => place.number);
  if (typeof index === 'number' && numbers.includes(index)) return null;
  if (layout.numbering.scheme === 'list' && (layout.numbering.list ?? []).length > 0)
    return `there is no cylinder ${index}, the maker's list has ${numbers.join(', ')}`;
  return numberProblem(index, layout.engine.cylinders, 'cylinder');
}

function withinProblem(index: LocationIndex, within: 'intake' | 'exhaust' | 'ring', layout: Layout): Problem {
  if (within === 'ring') return numberProblem(index, mostRings, 'ring');
  const most = layout.engine.valves[within];
  if (typeof index === 'number' && index > most)
    return `there is no ${within} valve ${index}, each cylinder has ${most}`;
  return numberProblem(index, most, `${within} valve`);
}

function markProblem(index: LocationIndex, allowed: readonly string[], words: string): Problem {
  return allowed.includes(String(index)) ? null : `'${index}' is not one of ${words}`;
}

function functionProblem(indices: readonly LocationIndex[], layout: Layout, lines: boolean): Problem {
  const [first, ...rest] = indices;
  if (first === undefined) return null;
  const isWord = typeof first === 'string' && /^[a-z]+$/.test(first);
  const known: readonly string[] = [...layout.hydraulics, ...standingFunctions, ...(lines ? lineWords : [])];
  if (isWord && !known.includes(first)) return `the machine's hydraulics have no '${first}'`;
  const places = isWord ? rest : indices;
  const [place, ...tooMany] = places;
  if (tooMany.length > 0) return 'it has too many numbers or sides';
  if (place === undefined) return null;
  return typeof place === 'number'
    ? numberProblem(place, mostOfAnything, 'part')
    : markProblem(place, corners, 'left, right or the four corners');
}

/** How many indices a part can carry. */
function mostIndices(counting: Counting): number {
  const second =
    (counting.by === 'cylinder' && counting.within !== undefined) ||
    (counting.by === 'main' && counting.shells === true) ||
    (counting.by === 'number' && counting.sections === true) ||
    counting.by === 'function';
  return second ? 2 : 1;
}

function firstProblem(index: LocationIndex, component: Component, counting: Counting, layout: Layout): Problem {
  switch (counting.by) {
    case 'head':
      return numberProblem(index, headCount(layout), component.name);
    case 'cylinder':
      return cylinderProblem(index, layout);
    case 'main':
      return numberProblem(index, mainCount(layout), component.name);
    case 'crankpin':
      return cylinderProblem(index, layout);
    case 'number':
      return numberProblem(index, counting.most ?? mostOfAnything, component.name);
    case 'side':
      if (typeof index === 'number' && counting.numbers === true)
        return numberProblem(index, mostOfAnything, component.name);
      return counting.corners === true
        ? markProblem(index, corners, 'left, right or the four corners')
        : markProblem(index, ['L', 'R'], 'left and right');
    case 'shell':
      return markProblem(index, shells, 'upper and lower');
    case 'end':
      return markProblem(index, ['A', 'B'], 'the two ends');
    case 'word':
      if (typeof index === 'number' && counting.numbers === true)
        return numberProblem(index, mostOfAnything, component.name);
      return markProblem(index, Object.keys(counting.words), Object.values(counting.words).join(', '));
    case 'function':
      return null;
  }
}

function secondProblem(index: LocationIndex, component: Component, counting: Counting, layout: Layout): Problem {
  if (counting.by === 'cylinder' && counting.within !== undefined) return withinProblem(index, counting.within, layout);
  if (counting.by === 'main') return markProblem(index, shells, 'upper and lower');
  if (counting.by === 'number') return numberProblem(index, mostOfAnything, `section of the ${component.name}`);
  return null;
}

/**
 * What is wrong with the numbers, sides and words of one part, in the mechanic's words; null where nothing is.
 */
export function indexProblem(node: LocationNode, component: Component, layout: Layout): Problem {
  const { counting } = component;
  const [first, second] = node.indices;
  if (first === undefined) return null;
  if (counting === undefined) return `the ${component.name} is not counted`;
  if (node.indices.length > mostIndices(counting)) return `the ${component.name} has too many numbers or sides`;
  if (counting.by === 'function') return functionProblem(node.indices, layout, counting.lines === true);
  return (
    firstProblem(first, component, counting, layout) ??
    (second === undefined ? null : secondProblem(second, component, counting, layout))
  );
}
