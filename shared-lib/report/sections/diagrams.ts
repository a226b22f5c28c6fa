import { type Diagram, diagramsFor, type PlacedFinding } from '../../diagrams/diagram-for.ts';
import type { Primitive } from '../../diagrams/drawing.ts';
import type { XY } from '../../geometry/spaces.ts';
import { speakNumbering } from '../../parts/speak-numbering.ts';
import type { ReportContext } from '../context.ts';
import type { DiagramBlock, DiagramsSection, ReportTag } from '../model.ts';

type Point = DiagramBlock['strokes'][number][number];

const pointOf = ({ x, y }: XY): Point => [rounded(x), rounded(y)];
/** A hundredth of a pixel is finer than any printer, and keeps the record's size down. */
const rounded = (value: number): number => Math.round(value * 100) / 100;

export function lineOf(primitive: Primitive): DiagramBlock['lines'][number] {
  switch (primitive.kind) {
    case 'circle':
      return { ...primitive, centre: pointOf(primitive.centre), radius: rounded(primitive.radius) };
    case 'path':
      return { ...primitive, points: primitive.points.map(pointOf) };
    case 'label':
      return { ...primitive, at: pointOf(primitive.at) };
  }
}

function blockOf(diagram: Diagram, tags: ReadonlyMap<string, ReportTag>, context: ReportContext): DiagramBlock {
  const { notes, width, height, anchors } = diagram;
  const hung = diagram.tags.flatMap(({ findingId, at, height: tagHeight, leaders }) => {
    const tag = tags.get(findingId);
    return tag === undefined
      ? []
      : [
          {
            tag,
            at: pointOf(at),
            height: tagHeight,
            leadersTo: leaders.map(({ from, to }) => [pointOf(from), pointOf(to)] as const),
          },
        ];
  });
  return {
    // A tree begins with its own name.
    title: diagram.kind === 'assembly-tree' ? '' : diagram.title,
    notes: [...notes],
    width,
    height,
    lines: diagram.primitives.map(lineOf),
    strokes: anchors.flatMap(({ strokes }) => strokes.map((stroke) => stroke.map(pointOf))),
    dots: anchors.filter(({ strokes }) => strokes.length === 0).map(({ point }) => pointOf(point)),
    tags: hung,
    legend: hung
      .map(({ tag }) => ({
        tag,
        words: anchors
          .filter(({ findingId }) => findingId === tag.findingId)
          .map(({ location }) => context.place(location))
          .join('; '),
      }))
      .sort((a, b) => a.tag.number - b.tag.number),
  };
}

/** Where the findings are, drawn, with how places are said; the same drawings as in the window. */
export function diagrams(context: ReportContext): DiagramsSection | null {
  const placed = context.ranked.map(({ finding, tag }): { finding: PlacedFinding; tag: ReportTag } => ({
    finding: {
      findingId: finding.id,
      tag: { number: tag.number, tier: tag.tier, state: finding.state },
      locations: finding.locations.filter(context.isKnownPlace),
    },
    tag,
  }));
  const drawn = diagramsFor(
    placed.map(({ finding }) => finding),
    context.layout,
  ).filter(({ anchors }) => anchors.length > 0);
  if (drawn.length === 0) return null;
  const tags = new Map(placed.map(({ finding, tag }) => [finding.findingId, tag]));
  return {
    kind: 'diagrams',
    heading: 'Where the findings are',
    numbering: speakNumbering(context.layout),
    blocks: drawn.map((diagram) => blockOf(diagram, tags, context)),
  };
}
