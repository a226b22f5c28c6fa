import { Graph, layout } from '@dagrejs/dagre';
import type { XY } from '../geometry/spaces.ts';
import type { Tag } from '../geometry/tag-plate.ts';
import { shortened } from '../report/sentence.ts';
import type { Story, StoryFinding } from './stories.ts';

export interface ChainNode {
  readonly findingId: string;
  readonly tag: Tag;
  readonly title: string;
  /** The title broken into lines; none in a narrow drawing, where a legend says it. */
  readonly lines: readonly string[];
  /** Upper left corner. */
  readonly at: XY;
  readonly width: number;
  readonly height: number;
}

export interface ChainEdge {
  readonly linkId: string;
  readonly fromId: string;
  readonly toId: string;
  readonly isSuspected: boolean;
  readonly closesLoop: boolean;
  /** From cause to effect, with a gap where its words stand. */
  readonly pieces: readonly (readonly XY[])[];
  /** The two strokes of the arrow's head, end to end through its tip. */
  readonly head: readonly XY[];
  readonly label: { readonly at: XY; readonly lines: readonly string[] };
}

/** A chain laid out from left to right, in CSS pixels. The same for window and report. */
export interface ChainDrawing {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly ChainNode[];
  readonly edges: readonly ChainEdge[];
}

/** What the library writes into its nodes and edges; middles, not corners. */
type LaidNode = Partial<XY & { readonly width: number; readonly height: number }>;
type LaidEdge = LaidNode & { readonly points?: readonly XY[] };

/** Letters in a line of the condensed face at 15 pixels, which take about 6 of them each. */
const lettersInLine = 24;
const lineHeight = 19;
const nodeWidth = 160;
const tagRoom = { width: 62, height: 36 };
const mostLines = 5;
const margin = 8;

/** The letters of a title, broken between words; the last line says that there was more. */
export function brokenInto(text: string, letters: number, most: number): readonly string[] {
  const lines: string[] = [];
  // A thin space holds a number and its unit together.
  for (const word of text.split(/[ \n\t]+/)) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= letters) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(shortened(word, letters + 4));
  }
  if (lines.length <= most) return lines;
  const kept = lines.slice(0, most);
  return [...kept.slice(0, -1), `${(kept.at(-1) ?? '').slice(0, letters - 1).replace(/[,;:.\s]+$/, '')}…`];
}

const stub = 14;

/** Out of the right side and into the left one, so that no line runs behind a neighbour above or below. */
const leaving = (node: ChainNode | undefined): XY[] =>
  node === undefined
    ? []
    : [0, stub].map((out) => ({ x: node.at.x + node.width + out, y: node.at.y + node.height / 2 }));
const entering = (node: ChainNode | undefined): XY[] =>
  node === undefined ? [] : [stub, 0].map((out) => ({ x: node.at.x - out, y: node.at.y + node.height / 2 }));

/** The part of a segment, from 0 to 1, that lies in a box about a point; null where none does (Liang and Barsky's clipping). */
function partInside(from: XY, to: XY, middle: XY, half: { readonly width: number; readonly height: number }) {
  let [enters, leaves] = [0, 1];
  for (const [start, step, low, high] of [
    [from.x, to.x - from.x, middle.x - half.width, middle.x + half.width],
    [from.y, to.y - from.y, middle.y - half.height, middle.y + half.height],
  ] as const) {
    if (step === 0) {
      if (start < low || start > high) return null;
      continue;
    }
    const [first, second] = [(low - start) / step, (high - start) / step].sort((a, b) => a - b) as [number, number];
    enters = Math.max(enters, first);
    leaves = Math.min(leaves, second);
  }
  return enters < leaves ? { enters, leaves } : null;
}

const along = (from: XY, to: XY, part: number): XY => ({
  x: from.x + (to.x - from.x) * part,
  y: from.y + (to.y - from.y) * part,
});

/** A line without what of it would run through its own words. */
function outside(points: readonly XY[], middle: XY, half: { readonly width: number; readonly height: number }): XY[][] {
  const pieces: XY[][] = [];
  let piece: XY[] = points.slice(0, 1);
  const end = () => {
    if (piece.length > 1) pieces.push(piece);
    piece = [];
  };
  for (const [index, to] of points.slice(1).entries()) {
    const from = points[index] ?? to;
    const inside = partInside(from, to, middle, half);
    if (inside === null) piece.push(to);
    else {
      if (inside.enters > 0) piece.push(along(from, to, inside.enters));
      end();
      if (inside.leaves < 1) piece = [along(from, to, inside.leaves), to];
    }
  }
  end();
  return pieces;
}

function headOf(points: readonly XY[]): XY[] {
  const tip = points.at(-1);
  const before = points.at(-2);
  if (tip === undefined || before === undefined) return [];
  const angle = Math.atan2(tip.y - before.y, tip.x - before.x);
  const wing = (turn: number): XY => ({
    x: tip.x - 11 * Math.cos(angle + turn),
    y: tip.y - 11 * Math.sin(angle + turn),
  });
  return [wing(0.42), tip, wing(-0.42)];
}

function sizeOf(lines: readonly string[], { finding }: StoryFinding) {
  if (lines.length === 0) return { width: tagRoom.width + (finding.number > 9 ? 9 : 0), height: tagRoom.height };
  return { width: nodeWidth, height: tagRoom.height + lines.length * lineHeight + 8 };
}

/**
 * Lays a story out. A link that closes a loop is laid out the other way round, so that the loop's beginning stays at the
 * left, and drawn from cause to effect all the same.
 *
 * @param titled  whether the titles stand in the drawing; without them it is narrow enough for a long chain on paper
 * Source: layered drawing after Sugiyama, by the dagre library.
 */
export function drawStory(story: Story, { titled }: { readonly titled: boolean }): ChainDrawing {
  // How the library places what it is given hangs on the order it is given in; the drawing with the fewest crossings is kept.
  const turned = { findings: story.findings.toReversed(), links: story.links.toReversed() };
  const given = [
    story,
    { ...story, links: turned.links },
    { ...story, findings: turned.findings },
    { ...story, ...turned },
  ];
  let best = drawnAs(story, story, { titled });
  for (const order of given.slice(1)) {
    if (crossingsIn(best) === 0) break;
    const other = drawnAs(story, order, { titled });
    if (crossingsIn(other) < crossingsIn(best)) best = other;
  }
  return best;
}

const side = (from: XY, to: XY, point: XY): number =>
  Math.sign((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x));

const cross = (a: readonly [XY, XY], b: readonly [XY, XY]): boolean =>
  side(...a, b[0]) * side(...a, b[1]) < 0 && side(...b, a[0]) * side(...b, a[1]) < 0;

const segmentsOf = (line: readonly XY[]): [XY, XY][] =>
  line.slice(1).map((to, index): [XY, XY] => [line[index] ?? to, to]);

/** How often a line crosses another, or the words of another. */
export function crossingsIn({ edges }: Pick<ChainDrawing, 'edges'>): number {
  const segments = edges.map(({ pieces }) => pieces.flatMap(segmentsOf));
  const words = edges.map(({ label: { at, lines } }) => ({
    at,
    half: { width: lines.length === 0 ? 0 : 24, height: (lines.length * lineHeight) / 2 },
  }));
  let count = 0;
  for (const [index, own] of segments.entries())
    for (const [other, theirs] of segments.entries()) {
      if (other === index) continue;
      if (other > index) count += own.flatMap((a) => theirs.filter((b) => cross(a, b))).length;
      const box = words[other];
      if (box && own.some(([from, to]) => partInside(from, to, box.at, box.half) !== null)) count += 1;
    }
  return count;
}

/** @param order  the same findings and links, as the library is given them */
function drawnAs({ findings, links }: Story, order: Story, { titled }: { readonly titled: boolean }): ChainDrawing {
  const graph = new Graph({ multigraph: true });
  graph.setGraph({ rankdir: 'LR', nodesep: 22, ranksep: 34, edgesep: 16, marginx: margin, marginy: margin });
  graph.setDefaultEdgeLabel(() => ({}));
  const lines = new Map(
    findings.map(({ finding, title }) => [finding.id, titled ? brokenInto(title, lettersInLine, mostLines) : []]),
  );
  for (const each of order.findings) graph.setNode(each.finding.id, sizeOf(lines.get(each.finding.id) ?? [], each));
  // In a narrow drawing the line alone says how sure it is.
  const labels = new Map(links.map((link) => [link.id, titled ? labelLines(link, links) : []]));
  for (const link of order.links) {
    const [from, to] = link.closesLoop ? [link.toId, link.fromId] : [link.fromId, link.toId];
    const words = labels.get(link.id) ?? [];
    const width = words.length === 0 ? 0 : Math.max(...words.map((line) => line.length)) * 6.8 + 6;
    graph.setEdge(from, to, { width, height: words.length * lineHeight, labelpos: 'c' }, link.id);
  }
  layout(graph);
  const nodes = findings.map(({ finding, line, title }): ChainNode => {
    const { x = 0, y = 0, width = 0, height = 0 }: LaidNode = graph.node(finding.id);
    const state = line?.state ?? finding.state;
    return {
      findingId: finding.id,
      tag: { number: finding.number, tier: line?.tier ?? null, state },
      title,
      lines: lines.get(finding.id) ?? [],
      at: { x: x - width / 2, y: y - height / 2 },
      width,
      height,
    };
  });
  const byId = new Map(nodes.map((node) => [node.findingId, node]));
  const edges = links.map((link): ChainEdge => {
    const [from, to] = link.closesLoop ? [link.toId, link.fromId] : [link.fromId, link.toId];
    const laid: LaidEdge = graph.edge(from, to, link.id);
    const between: XY[] = (laid.points ?? []).slice(1, -1).map(({ x, y }: XY) => ({ x, y }));
    const at = { x: laid.x ?? 0, y: laid.y ?? 0 };
    const there = [...leaving(byId.get(from)), ...between, ...entering(byId.get(to))];
    const points = link.closesLoop ? there.toReversed() : there;
    return {
      linkId: link.id,
      fromId: link.fromId,
      toId: link.toId,
      isSuspected: link.certainty === 'suspected',
      closesLoop: link.closesLoop,
      pieces: outside(points, at, { width: (laid.width ?? 0) / 2, height: (laid.height ?? 0) / 2 }),
      head: headOf(points),
      label: { at, lines: labels.get(link.id) ?? [] },
    };
  });
  const { width = 0, height = 0 }: LaidNode = graph.graph();
  return { width, height, nodes, edges };
}

/** How sure the link is, and how it stands to the others that lead to the same. */
function labelLines(link: Story['links'][number], all: Story['links']): readonly string[] {
  if (link.closesLoop) return [link.certainty, 'closes the loop'];
  const others = all.some(({ id, toId, closesLoop }) => id !== link.id && toId === link.toId && !closesLoop);
  return [link.certainty, ...(others ? [link.join === 'or' ? 'or another' : 'with others'] : [])];
}
