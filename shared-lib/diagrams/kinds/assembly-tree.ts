import type { Layout } from '../../model/layout.ts';
import { copyPaths } from '../../parts/children-of.ts';
import type { Component } from '../../parts/component.ts';
import { componentTemplate } from '../../parts/component-template.ts';
import { componentsAlong } from '../../parts/find-component.ts';
import { formatPath } from '../../parts/format-location.ts';
import { isOffered } from '../../parts/layout-needs.ts';
import type { LocationPath } from '../../parts/location.ts';
import { capitalise, speakComponent } from '../../parts/speak-component.ts';
import { pluralOf } from '../../parts/speak-node.ts';
import { box, type DiagramPart, label, open, type Primitive, pointAt, type Scene } from '../drawing.ts';
import type { DiagramKind } from '../kind.ts';

const width = 250;
const rowHeight = 24;
const indent = 20;
/** Bold letters at the labels' size, by how wide they are; on the wide side, so that no leader begins in a word. */
const letterWidths: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[iljf .,;:'’()|-]/u, 4.6],
  [/[rt]/u, 5.4],
  [/[mwMW]/u, 11.5],
  [/\p{Lu}/u, 9],
];
const otherWidth = 7.4;

const widthOf = (text: string): number =>
  [...text].reduce(
    (sum, letter) => sum + (letterWidths.find(([letters]) => letters.test(letter))?.[1] ?? otherWidth),
    0,
  );

/** Parts of the same assembly that are named around the one that is meant. */
const neighbours = 2;

interface Row {
  readonly path: LocationPath;
  readonly text: string;
  readonly depth: number;
  readonly meant: boolean;
  /** Stands for parts that are left out. */
  readonly rest: boolean;
}

function isPrefix(part: LocationPath, whole: LocationPath): boolean {
  return part.length <= whole.length && formatPath(whole.slice(0, part.length)) === formatPath(part);
}

/** Copies that some place names, each on its own; else the part as one. */
function pathsBelow(
  component: Component,
  above: LocationPath,
  wanted: readonly LocationPath[],
  layout: Layout,
): LocationPath[] {
  const named = wanted
    .filter((path) => isPrefix(above, path) && path[above.length]?.code === component.code)
    .map((path) => path.slice(0, above.length + 1));
  const unique = [...new Map(named.map((path) => [formatPath(path), path])).values()];
  if (unique.length > 0) return unique;
  const [first] = copyPaths(component, above, layout);
  return first === undefined ? [] : [[...above, { code: component.code, indices: [] }]];
}

function textOf(path: LocationPath, component: Component, layout: Layout): string {
  if (path.at(-1)?.indices.length !== 0) return speakComponent(formatPath(path), layout);
  const many = component.counting !== undefined && component.single !== true && component.counting.by !== 'head';
  return capitalise(many ? pluralOf(component) : component.name);
}

/** The path down to each place, with a few neighbours on every step, and a word for those left out. */
function rowsBelow(
  components: readonly Component[],
  above: LocationPath,
  wanted: readonly LocationPath[],
  layout: Layout,
): Row[] {
  const depth = above.length;
  const offered = components.filter(
    (component) =>
      isOffered(component, layout) ||
      wanted.some((path) => path[depth]?.code === component.code && isPrefix(above, path)),
  );
  const isWanted = (component: Component) =>
    wanted.some((path) => isPrefix(above, path) && path[depth]?.code === component.code);
  const wantedAt = offered.flatMap((component, index) => (isWanted(component) ? [index] : []));
  const near = (index: number) =>
    wantedAt.length === 0
      ? index <= neighbours
      : wantedAt.some((at) => Math.abs(at - index) <= (depth === 0 ? 0 : neighbours));
  const shown = offered.filter((_, index) => near(index));
  const rows = shown.flatMap((component) =>
    pathsBelow(component, above, wanted, layout).flatMap((path): Row[] => {
      const leadsOn = wanted.some((each) => isPrefix(path, each) && each.length > path.length);
      const meant = wanted.some((each) => formatPath(each) === formatPath(path));
      const row: Row = { path, text: textOf(path, component, layout), depth, meant, rest: false };
      const shallow = meant && depth === 0;
      return [row, ...(leadsOn || shallow ? rowsBelow(component.parts ?? [], path, wanted, layout) : [])];
    }),
  );
  const left = offered.length - shown.length;
  if (left === 0 || depth === 0) return rows;
  return [...rows, { path: above, text: left === 1 ? 'one more' : `${left} more`, depth, meant: false, rest: true }];
}

function drawRows(rows: readonly Row[]): Primitive[] {
  const x = (depth: number) => 8 + depth * indent;
  const y = (index: number) => 14 + index * rowHeight;
  return rows.flatMap((row, index): Primitive[] => {
    const parent = rows.slice(0, index).findLastIndex((each) => each.depth === row.depth - 1 && !each.rest);
    const branch =
      parent < 0
        ? []
        : [
            open(
              [
                { x: x(row.depth - 1) + 2, y: y(parent) + 9 },
                { x: x(row.depth - 1) + 2, y: y(index) },
                { x: x(row.depth) - 4, y: y(index) },
              ],
              'hair',
              row.rest,
            ),
          ];
    return [...branch, label(x(row.depth), y(index) + 5, row.text, 'start', row.meant ? 'strong' : 'word')];
  });
}

/** Everything that has no drawing of its own: the way down the machine's parts to it. */
export const assemblyTree: DiagramKind = {
  id: 'assembly-tree',
  subjectOf: ({ path }) => path[0]?.code ?? null,
  draw: (subject, locations, layout): Scene => {
    const wanted = locations.map(({ path }) => path);
    const system = componentTemplate.filter(({ code }) => code === subject);
    const rows = rowsBelow(system, [], wanted, layout);
    const y = (index: number) => 14 + index * rowHeight;
    const longest = Math.max(...rows.map(({ text, depth }) => 8 + depth * indent + widthOf(text)));
    return {
      title: capitalise(system[0]?.name ?? 'machine'),
      notes: [],
      mirrored: false,
      numbered: locations.some(({ path }) => componentsAlong(path).some(({ counting }) => counting?.by === 'cylinder')),
      width: Math.max(width, Math.ceil(longest)),
      height: rows.length * rowHeight + 6,
      tagsOn: 'right',
      primitives: drawRows(rows),
      parts: rows
        .filter(({ rest }) => !rest)
        .map((row): DiagramPart => {
          const index = rows.indexOf(row);
          return {
            path: formatPath(row.path),
            name: row.text,
            outline: box(4 + row.depth * indent, y(index) - 12, Math.max(width, Math.ceil(longest)), y(index) + 12),
          };
        }),
      anchorOf: ({ path }) => {
        const index = rows.findIndex((row) => formatPath(row.path) === formatPath(path) && !row.rest);
        const row = rows[index];
        if (row === undefined) return null;
        return pointAt(8 + row.depth * indent + widthOf(row.text) + 4, y(index));
      },
    };
  },
};
