import type { Layout } from '../model/layout.ts';
import type { OfferedComponent } from './children-of.ts';
import { componentTree } from './component-tree.ts';
import { componentsAlong } from './find-component.ts';
import { parseLocation } from './parse-location.ts';
import { speakComponent } from './speak-component.ts';

interface Entry extends OfferedComponent {
  /** The words of its label: the fewer are left over, the better it fits. */
  readonly labelWords: readonly string[];
  /** All words it is found by. */
  readonly words: readonly string[];
  /** Its name and its other names, whole: `bore` finds the bore before the injector bore. */
  readonly names: readonly string[];
}

/** Words that carry nothing in a search. */
const fillers = ['of', 'the', 'no', 'nr', 'number', 'at', 'in'];
const shorthand: ReadonlyMap<string, readonly string[]> = new Map([
  ['lh', ['left']],
  ['rh', ['right']],
  ['fl', ['front', 'left']],
  ['fr', ['front', 'right']],
  ['rl', ['rear', 'left']],
  ['rr', ['rear', 'right']],
  ['lf', ['front', 'left']],
  ['rf', ['front', 'right']],
  ['lr', ['rear', 'left']],
]);

function wordsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/[a-z]+|\d+/g) ?? [];
}

function entryOf(place: OfferedComponent): Entry {
  const components = componentsAlong(parseLocation(place.path).path);
  const own = components.at(-1);
  const byCylinder = components.some((component) => component.counting?.by === 'cylinder');
  const labelWords = wordsOf(place.label);
  const others = components.flatMap((component) => [component.name, ...(component.also ?? [])]);
  return {
    ...place,
    labelWords,
    words: [...new Set([...labelWords, ...others.flatMap(wordsOf), ...(byCylinder ? ['cylinder'] : [])])],
    names: own === undefined ? [] : [own.name, ...(own.also ?? [])].map((name) => wordsOf(name).join(' ')),
  };
}

/** Made once for each layout and kept as long as the layout is. */
const entriesByLayout = new WeakMap<Layout, readonly Entry[]>();

function entriesOf(layout: Layout): readonly Entry[] {
  const known = entriesByLayout.get(layout);
  if (known !== undefined) return known;
  const places = componentTree(layout).flatMap((system) => [
    system,
    ...system.assemblies.flatMap((assembly) => assembly.places),
  ]);
  const entries = places.map(entryOf);
  entriesByLayout.set(layout, entries);
  return entries;
}

function isNumber(word: string): boolean {
  return /^\d+$/.test(word);
}

function finds(entry: Entry, word: string): boolean {
  return isNumber(word) ? entry.labelWords.includes(word) : entry.words.some((candidate) => candidate.startsWith(word));
}

/** A part whose copies are not counted takes the number that was asked for. */
function numbered(entry: Entry, numbers: readonly string[], layout: Layout): Entry {
  const [number, ...more] = numbers;
  if (!entry.takesNumber || number === undefined || more.length > 0 || Number(number) < 1) return entry;
  const path = `${entry.path}.${Number(number)}`;
  const label = speakComponent(path, layout);
  return { ...entry, path, label, labelWords: wordsOf(label), takesNumber: false };
}

/** Left-over words of the label, with a name that is asked for outright put first. */
function misfit(entry: Entry, asked: readonly string[]): number {
  const withoutNumbers = asked.filter((word) => !isNumber(word)).join(' ');
  const exact = entry.names.includes(withoutNumbers) ? 100 : 0;
  const inLabel = asked.filter((word) => entry.labelWords.some((candidate) => candidate.startsWith(word))).length;
  return entry.labelWords.length - 2 * inLabel - exact;
}

/**
 * Finds parts by what a mechanic types, as he types it: beginnings of words, in any order, with other names for the same
 * part.
 *
 * @param text  `exh seat 3`, `bore 3`, `left boom hose`, `rh lift arm`
 * @param most  how many lines a picker has room for
 * @returns  best first, ties in tree order; empty where nothing fits or nothing was typed
 */
export function findComponents(text: string, layout: Layout, most = 20): readonly OfferedComponent[] {
  const asked = wordsOf(text)
    .filter((word) => !fillers.includes(word))
    .flatMap((word) => shorthand.get(word) ?? [word]);
  if (asked.length === 0) return [];
  const numbers = asked.filter(isNumber);
  const found = entriesOf(layout)
    .map((entry) => (numbers.some((number) => !finds(entry, number)) ? numbered(entry, numbers, layout) : entry))
    .filter((entry) => asked.every((word) => finds(entry, word)));
  return found
    .map((entry, order) => ({ entry, order, misfit: misfit(entry, asked) }))
    .sort((a, b) => a.misfit - b.misfit || a.order - b.order)
    .slice(0, most)
    .map(({ entry: { path, label, group, takesNumber } }) => ({ path, label, group, takesNumber }));
}
