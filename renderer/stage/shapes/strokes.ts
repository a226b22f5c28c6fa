import type { Stroke } from '../../../shared-lib/geometry/outlines/outline.ts';
import type { FindingState } from '../../../shared-lib/model/finding.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';

/** How a mark stands: its finding's state (null while it belongs to none), and whether it is in hand. */
export interface MarkStyle {
  readonly look: Look;
  readonly state: FindingState | null;
  readonly isPicked: boolean;
}

/** Nothing was found: the white line is hollow, this much of it dark. */
const hollowShare = 0.5;
const edgeAlpha = 0.8;
const dotsApartPx = 13;

const dashes: Partial<Record<FindingState, readonly number[]>> = {
  suspected: [11, 7],
  'not-examined': [5, 6],
};

/**
 * Edge, halo and white line, from the outside in. No one of them is seen on every metal; together they are.
 * Widths are in CSS pixels, so they stay the same at any zoom.
 */
export function drawStrokes(context: Paint, strokes: readonly Stroke[], style: MarkStyle): void {
  const { widths } = style.look;
  const wider = style.isPicked ? widths.picked - widths.line : 0;
  const unsure = strokes.filter(({ isUnsure }) => isUnsure);
  if (unsure.length > 0) drawDots(context, pathOf(unsure), style);
  const path = pathOf(unsure.length > 0 ? strokes.filter(({ isUnsure }) => !isUnsure) : strokes);
  const dash = style.state ? dashes[style.state] : undefined;
  context.save();
  context.setLineDash(dash ? [...dash] : []);
  context.lineCap = dash ? 'butt' : 'round';
  context.lineJoin = 'round';
  strokeWith(context, path, style.look.edge, widths.edge + wider, edgeAlpha);
  strokeWith(context, path, style.look.halo, widths.halo + wider, 1);
  strokeWith(context, path, style.look.line, widths.line + wider, 1);
  if (style.state === 'none-found') strokeWith(context, path, style.look.edge, (widths.line + wider) * hollowShare, 1);
  context.restore();
}

/** A line of dots: the tracer is not sure that the crack runs here. */
function drawDots(context: Paint, path: Path2D, { look, isPicked }: MarkStyle): void {
  const wider = isPicked ? look.widths.picked - look.widths.line : 0;
  context.save();
  context.setLineDash([0, dotsApartPx]);
  context.lineCap = 'round';
  strokeWith(context, path, look.edge, look.widths.edge + wider, edgeAlpha);
  strokeWith(context, path, look.halo, look.widths.halo + wider, 1);
  strokeWith(context, path, look.line, look.widths.line + wider, 1);
  context.restore();
}

function strokeWith(context: Paint, path: Path2D, colour: string, width: number, alpha: number): void {
  context.globalAlpha = alpha;
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke(path);
}

function pathOf(strokes: readonly Stroke[]): Path2D {
  const path = new Path2D();
  for (const { points, closed } of strokes) {
    for (const [index, point] of points.entries()) {
      if (index === 0) path.moveTo(point.x, point.y);
      else path.lineTo(point.x, point.y);
    }
    if (closed) path.closePath();
  }
  return path;
}
