import type { Layout } from '../model/layout.ts';
import type { Component } from './component.ts';
import { headCount } from './engine-counts.ts';
import { speakFunction } from './function-words.ts';
import type { LocationIndex, LocationNode } from './location.ts';

const markWords: ReadonlyMap<string, string> = new Map([
  ['L', 'left'],
  ['R', 'right'],
  ['FL', 'front-left'],
  ['FR', 'front-right'],
  ['RL', 'rear-left'],
  ['RR', 'rear-right'],
  ['U', 'upper'],
  ['LO', 'lower'],
  ['I', 'intake'],
  ['E', 'exhaust'],
  ['A', 'end A'],
  ['B', 'end B'],
]);

/** Ends of a hose or tube: A at the pump or valve, B at the actuator. */
export const endWords = { A: 'pump end', B: 'actuator end' } as const;

/** The name for all of them. */
export function pluralOf(component: Component): string {
  if (component.plural !== undefined) return component.plural;
  return `${component.name}s`;
}

function speakWord(index: LocationIndex, component: Component): string {
  const text = String(index);
  const counting = component.counting;
  if (counting?.by === 'word') return (Object.hasOwn(counting.words, text) ? counting.words[text] : null) ?? text;
  if (counting?.by === 'end') return text === 'A' ? 'pump-end' : 'actuator-end';
  return markWords.get(text) ?? speakFunction(text);
}

function isPlural(component: Component, layout: Layout): boolean {
  const { counting } = component;
  if (counting === undefined || component.single === true) return false;
  if (counting.by === 'head') return headCount(layout) > 1;
  return true;
}

/** Words and sides stand before the name, a side first: `rear-left jack hose`. Numbers follow it: `relief valve 1`. */
function speakFreely(node: LocationNode, component: Component): string {
  const words = node.indices.filter((index) => typeof index === 'string');
  const sides = words.filter((word) => markWords.has(word));
  const functions = words.filter((word) => !markWords.has(word));
  const numbers = node.indices.filter((index) => typeof index === 'number');
  const before = [...sides, ...functions].map((word) => speakWord(word, component));
  const [first, second] = numbers;
  const after = second === undefined ? [first] : [first, `section ${second}`];
  const spokenAfter = after.filter((part) => part !== undefined).join(', ');
  const name = functions.length > 0 ? (component.withFunction ?? component.name) : component.name;
  return [...before, name, ...(spokenAfter === '' ? [] : [spokenAfter])].join(' ');
}

function speakMain(node: LocationNode, component: Component): string {
  const [number, shell] = node.indices;
  const name = `${component.name} ${number}`;
  return shell === undefined ? name : `${name}, ${markWords.get(String(shell)) ?? shell} shell`;
}

/** The cylinder's own number is left to the caller; what remains is which valve or ring, where there are several. */
function speakOfCylinder(node: LocationNode, component: Component, layout: Layout): string {
  const [, second] = node.indices;
  const counting = component.counting;
  if (second === undefined || counting?.by !== 'cylinder') return component.name;
  if (counting.within === 'ring') return `${component.name} ${second}`;
  const several = counting.within === undefined || layout.engine.valves[counting.within] > 1;
  return several ? `${component.name} ${second}` : component.name;
}

/**
 * One part of a path as it is said: `left boom hose`, `relief valve 1`, `liner 4`.
 *
 * @param name  stands in for the component's name: a reference on a deck says coolant passage for the water jacket
 */
export function speakNode(node: LocationNode, component: Component, layout: Layout, name = component.name): string {
  const named = name === component.name ? component : { ...component, name };
  if (node.indices.length === 0)
    return isPlural(component, layout) && name === component.name ? pluralOf(component) : name;
  if (component.counting?.by === 'head' && headCount(layout) === 1) return name;
  if (component.ofCylinder === true) return speakOfCylinder(node, named, layout);
  if (component.counting?.by === 'main') return speakMain(node, named);
  return speakFreely(node, named);
}

/** The cylinder a node stands for, where it is spoken as part of its cylinder. */
export function cylinderOf(node: LocationNode, component: Component): number | null {
  const [first] = node.indices;
  return component.counting?.by === 'cylinder' && typeof first === 'number' ? first : null;
}
