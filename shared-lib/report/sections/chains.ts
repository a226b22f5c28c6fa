import { type ChainDrawing, drawStory } from '../../chains/draw.ts';
import { type Story, storiesOf } from '../../chains/stories.ts';
import { evidenceWords, tellStory } from '../../chains/tell.ts';
import { box, closed, label, open, type Primitive } from '../../diagrams/drawing.ts';
import type { ReportContext } from '../context.ts';
import type { ChainsSection, DiagramBlock, ReportTag } from '../model.ts';
import { asSentence } from '../sentence.ts';
import { lineOf } from './diagrams.ts';

/** At three quarters of its size a drawing's words are still those of the small print: text width in CSS pixels, by that. */
const widestTitled = 178 / (25.4 / 96) / 0.72;
const tagHeight = 26;

const linesOfNode = ({ at, width, height, lines }: ChainDrawing['nodes'][number]): Primitive[] =>
  lines.length === 0
    ? []
    : [
        closed(box(at.x, at.y, at.x + width, at.y + height), 'hair'),
        ...lines.map((line, index) => label(at.x + 8, at.y + 47 + index * 19, line, 'start')),
      ];

const linesOfEdge = (edge: ChainDrawing['edges'][number]): Primitive[] => {
  const weight = edge.closesLoop ? ('hair' as const) : ('line' as const);
  const { at, lines } = edge.label;
  const first = at.y + 5 - ((lines.length - 1) * 17) / 2;
  return [
    ...edge.pieces.map((piece) => open(piece, weight, edge.isSuspected)),
    open(edge.head, weight),
    ...lines.map((line, index) => label(at.x, first + index * 17, line)),
  ];
};

function drawingOf(story: Story, tags: ReadonlyMap<string, ReportTag>): DiagramBlock {
  const titled = drawStory(story, { titled: true });
  const isTitled = titled.width <= widestTitled;
  const drawing = isTitled ? titled : drawStory(story, { titled: false });
  const hung = drawing.nodes.flatMap((node) => {
    const tag = tags.get(node.findingId);
    return tag === undefined ? [] : [{ node, tag }];
  });
  return {
    title: '',
    notes: [],
    width: drawing.width,
    height: drawing.height + 12,
    lines: [...drawing.edges.flatMap(linesOfEdge), ...drawing.nodes.flatMap(linesOfNode)].map(lineOf),
    strokes: [],
    dots: [],
    tags: hung.map(({ node, tag }) => ({
      tag,
      at: [node.at.x + 7, node.at.y + 5] as const,
      height: tagHeight,
      leadersTo: [],
    })),
    legend: isTitled ? [] : hung.map(({ node, tag }) => ({ tag, words: node.title })),
  };
}

/** What led to what: each chain told in sentences, drawn from left to right, and link by link with what it rests on. */
export function chains(context: ReportContext): ChainsSection | null {
  const { record } = context;
  const stories = storiesOf(record, context.shop.units);
  if (stories.length === 0) return null;
  const tags = new Map(
    record.findings.map((finding): [string, ReportTag] => {
      const line = record.standing.lines.find(({ findingId }) => findingId === finding.id);
      const state = finding.kind === 'observation' ? 'observation' : (line?.state ?? finding.state);
      return [finding.id, { findingId: finding.id, number: finding.number, tier: line?.tier ?? null, state }];
    }),
  );
  const numberOf = (id: string) => record.findings.find((finding) => finding.id === id)?.number ?? '?';
  return {
    kind: 'chains',
    heading: 'What led to what',
    note: `An unbroken line is a link that is confirmed, a dashed one a link that is suspected${stories.some(({ links }) => links.some(({ closesLoop }) => closesLoop)) ? '; a thin one closes the chain on itself' : ''}.`,
    columns: ['Link', 'How sure', 'What it rests on'],
    stories: stories.map((story) => ({
      told: tellStory(story),
      drawing: drawingOf(story, tags),
      links: story.links.map((link) => ({
        link: `Finding ${numberOf(link.fromId)} to finding ${numberOf(link.toId)}${link.closesLoop ? ', closing the loop' : ''}`,
        sure: link.certainty,
        restsOn: asSentence(evidenceWords(link, record)) || 'Nothing is named.',
      })),
    })),
  };
}
