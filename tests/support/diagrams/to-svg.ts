import type { Diagram } from '../../../shared-lib/diagrams/diagram-for.ts';
import type { Primitive } from '../../../shared-lib/diagrams/drawing.ts';
import { tagScale } from '../../../shared-lib/diagrams/hang-tags.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { drawTagPlate } from '../../../shared-lib/geometry/tag-plate.ts';

const pen = { edge: 2.2, line: 1.4, hair: 0.8 };
const inMarkup = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
const chainOf = (points: readonly XY[]) => points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');

function drawn(primitive: Primitive): string {
  switch (primitive.kind) {
    case 'circle':
      return `<circle cx="${primitive.centre.x}" cy="${primitive.centre.y}" r="${primitive.radius}" fill="none" stroke="#17191c" stroke-width="${pen[primitive.weight]}"/>`;
    case 'path':
      return `<${primitive.closed ? 'polygon' : 'polyline'} points="${chainOf(primitive.points)}" fill="none" stroke="#17191c" stroke-width="${pen[primitive.weight]}"${primitive.dashed ? ' stroke-dasharray="4 3"' : ''}/>`;
    case 'label':
      return `<text x="${primitive.at.x}" y="${primitive.at.y}" font-size="${primitive.weight === 'number' ? 15 : 14}" font-weight="${primitive.weight === 'word' ? 400 : 700}" text-anchor="${primitive.anchor}" font-family="Barlow Semi Condensed, Barlow, sans-serif">${inMarkup(primitive.text)}</text>`;
  }
}

/** A diagram as a plain picture, for looking at many at once. */
export function diagramToSvg(diagram: Diagram): string {
  const lines = diagram.primitives.map(drawn);
  const strokes = diagram.anchors.flatMap(({ strokes: each }) =>
    each.map((stroke) => `<polyline points="${chainOf(stroke)}" fill="none" stroke="#22368f" stroke-width="4"/>`),
  );
  const dots = diagram.anchors
    .filter(({ strokes: each }) => each.length === 0)
    .map(({ point }) => `<circle cx="${point.x}" cy="${point.y}" r="3.5" fill="#22368f"/>`);
  const tags = diagram.tags.flatMap(({ tag, at, leaders }) => {
    const plate = drawTagPlate(tag);
    return [
      ...leaders.map(
        ({ from, to }) =>
          `<line x1="${from.x}" y1="${from.y}" x2="${to.x}" y2="${to.y}" stroke="#17191c" stroke-width="1.2"/>`,
      ),
      `<g transform="translate(${at.x} ${at.y}) scale(${tagScale})"><path d="${plate.body}" fill="#fffefb"/>${plate.core ? `<path d="${plate.core}" fill="#17191c"/>` : ''}${plate.lines.map(({ d, width }) => `<path d="${d}" fill="none" stroke="#17191c" stroke-width="${width}"/>`).join('')}<text x="${plate.label.x}" y="${plate.label.baselineY}" font-size="21" font-weight="700" fill="${plate.core ? '#fffefb' : '#17191c'}" text-anchor="middle" font-family="Barlow Condensed, sans-serif">${plate.label.text}</text></g>`,
    ];
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${diagram.width}" height="${diagram.height}" viewBox="0 0 ${diagram.width} ${diagram.height}"><rect width="100%" height="100%" fill="#fffefb"/>${[...lines, ...strokes, ...dots, ...tags].join('')}</svg>`;
}
