import type { Layout } from '../model/layout.ts';
import type { Component, Counting } from './component.ts';
import { cylinderNumbers, headCount, mainCount } from './engine-counts.ts';
import { lineWords, standingFunctions } from './function-words.ts';
import type { LocationIndex } from './location.ts';

type Indices = readonly LocationIndex[];

const cornerMarks = ['FL', 'FR', 'RL', 'RR'];
const handMarks = ['L', 'R'];
/** Functions with a cylinder at each corner of the machine. */
const cornerFunctions = ['jack', 'outrigger', 'stabiliser', 'stabilizer', 'leg'];
/** Offered for picking; a piston with more can still be typed. */
const offeredRings = 4;

function upTo(most: number): readonly number[] {
  return Array.from({ length: most }, (_, index) => index + 1);
}

function copiesOfFunctions(words: readonly string[]): readonly Indices[] {
  return words.flatMap((word) => {
    const marks = cornerFunctions.includes(word) ? cornerMarks : handMarks;
    return [[word], ...marks.map((mark) => [word, mark])];
  });
}

/** Actuators come in pairs and fours; a suction line or a gauge is one. */
function copiesByFunction(system: string, lines: boolean, layout: Layout): readonly Indices[] {
  if (system === 'STEER') return copiesOfFunctions(['steer']);
  if (system !== 'HYD') return layout.hydraulics.map((word) => [word]);
  if (!lines) return copiesOfFunctions(layout.hydraulics);
  const standing = layout.stationary === true ? [] : standingFunctions;
  return [...copiesOfFunctions([...layout.hydraulics, ...standing]), ...lineWords.map((word) => [word])];
}

function copiesOfMains(shells: boolean, layout: Layout): readonly Indices[] {
  return upTo(mainCount(layout)).flatMap((main) => (shells ? [[main], [main, 'U'], [main, 'LO']] : [[main]]));
}

function copiesByCylinder(within: 'intake' | 'exhaust' | 'ring' | undefined, layout: Layout): readonly Indices[] {
  const cylinders = cylinderNumbers(layout);
  if (within === undefined) return cylinders.map((cylinder) => [cylinder]);
  const inner = upTo(within === 'ring' ? offeredRings : layout.engine.valves[within]);
  return cylinders.flatMap((cylinder) => inner.map((number) => [cylinder, number]));
}

function copies(counting: Counting, system: string, layout: Layout): readonly Indices[] {
  switch (counting.by) {
    case 'head':
      return upTo(headCount(layout)).map((head) => [head]);
    case 'cylinder':
      return copiesByCylinder(counting.within, layout);
    case 'main':
      return copiesOfMains(counting.shells === true, layout);
    case 'crankpin':
      return layout.engine.arrangement === 'V'
        ? upTo(Math.ceil(layout.engine.cylinders / 2)).map((pin) => [pin])
        : cylinderNumbers(layout).map((pin) => [pin]);
    case 'number':
      return counting.most === undefined ? [] : upTo(counting.most).map((number) => [number]);
    case 'side':
      return [...handMarks, ...(counting.corners === true ? cornerMarks : [])].map((mark) => [mark]);
    case 'function':
      return copiesByFunction(system, counting.lines === true, layout);
    case 'shell':
      return [['U'], ['LO']];
    case 'end':
      return [['A'], ['B']];
    case 'word':
      return Object.keys(counting.words).map((word) => [word]);
  }
}

/**
 * The copies of a part that a picker offers, as their indices; the empty one stands for all of them or for the only one.
 *
 * @param system  the code of the system it stands in: the steering's cylinder knows one function only
 */
export function copiesOf(component: Component, system: string, layout: Layout): readonly Indices[] {
  if (component.counting === undefined) return [[]];
  const found = copies(component.counting, system, layout);
  return component.counting.by === 'head' && found.length === 1 ? found : [[], ...found];
}

/** Whether its number is open-ended, so that it must be typed: head-bolt hole 7. */
export function takesNumber(component: Component): boolean {
  const { counting } = component;
  if (counting === undefined) return false;
  if (counting.by === 'number') return counting.most === undefined;
  return (counting.by === 'word' || counting.by === 'side') && counting.numbers === true;
}
