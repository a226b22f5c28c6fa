import type { Size } from '../../../../shared-lib/geometry/spaces.ts';
import type { TagPlace } from '../../../../shared-lib/geometry/tag-placement.ts';
import {
  drawTagPlate,
  type Tag,
  type TagPlateDrawing,
  tagFontSize,
} from '../../../../shared-lib/geometry/tag-plate.ts';
import type { Look } from '../../look.ts';
import type { Paint } from '../../paint.ts';

/** The plate on a photo wears a mark's own three strokes round it, narrower than a mark's. */
const rim = { edge: 8, halo: 6.5, line: 3 };
const pickedRim = { edge: 11, halo: 9.5, line: 4 };
const leaderWidths = { dark: 4.5, line: 1.8 };
/** How dark the photo gets under a hollow tag, so that its white number can be read on bright alloy too. */
const hollowAlpha = 0.62;
const hollowLine = 2;
/** How far the rim reaches beyond the plate, in the plate's own units. */
export const rimReach = 6;

/** The line from a tag to its mark; drawn before any plate, so that it never crosses a number. */
export function drawLeader(context: Paint, leader: TagPlace['leader'], look: Look): void {
  if (!leader) return;
  context.save();
  context.lineCap = 'round';
  for (const [colour, width] of [
    [look.edge, leaderWidths.dark],
    [look.line, leaderWidths.line],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    context.moveTo(leader.from.x, leader.from.y);
    context.lineTo(leader.to.x, leader.to.y);
    context.stroke();
  }
  context.restore();
}

/** The size that a tag takes on the stage, in CSS pixels. */
export function tagSize(tag: Tag, look: Look): Size {
  const { width, height } = drawTagPlate(tag);
  return { width: width * look.tagScale, height: height * look.tagScale };
}

/** A stamped tag with its upper left corner at this place. */
export function drawTag(context: Paint, tag: Tag, look: Look, isPicked: boolean, left: number, top: number): void {
  context.save();
  context.translate(left, top);
  context.scale(look.tagScale, look.tagScale);
  drawPlate(context, tag, look, isPicked);
  drawNumber(context, tag, look);
  context.restore();
}

/** The plate without its number: what many tags have in common. */
export function drawPlate(context: Paint, tag: Tag, look: Look, isPicked: boolean): void {
  const plate = drawTagPlate(tag);
  const body = new Path2D(plate.body);
  const around = isPicked ? pickedRim : rim;
  context.save();
  context.lineJoin = 'round';
  context.save();
  // Inside a hollow plate the photo shows through, so edge and halo stay outside it.
  if (plate.isHollow) context.clip(outside(body, plate), 'evenodd');
  stroke(context, body, look.edge, around.edge, 0.8);
  stroke(context, body, look.halo, around.halo);
  context.restore();
  context.globalAlpha = plate.isHollow ? hollowAlpha : 1;
  context.fillStyle = plate.isHollow ? look.edge : look.line;
  context.fill(body);
  context.globalAlpha = 1;
  stroke(context, body, look.line, plate.isHollow ? hollowLine : around.line);
  if (!plate.isHollow) drawInk(context, plate, look);
  drawHole(context, plate, inkOf(plate, look));
  context.restore();
}

export function drawNumber(context: Paint, tag: Tag, look: Look): void {
  const plate = drawTagPlate(tag);
  context.save();
  context.fillStyle = inkOf(plate, look);
  context.font = `700 ${tagFontSize}px ${look.tagFont}`;
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  context.fillText(plate.label.text, plate.label.x, plate.label.baselineY);
  context.restore();
}

/** Dark on a white plate; white where the plate is solid or hollow. */
function inkOf(plate: TagPlateDrawing, look: Look): string {
  return plate.core !== null || plate.isHollow ? look.line : look.plateInk;
}

function drawInk(context: Paint, plate: TagPlateDrawing, look: Look): void {
  if (plate.core !== null) {
    context.fillStyle = look.plateInk;
    context.fill(new Path2D(plate.core));
  }
  for (const line of plate.lines) {
    context.setLineDash(line.dash ? [...line.dash] : []);
    stroke(context, new Path2D(line.d), look.plateInk, line.width);
  }
  context.setLineDash([]);
}

function drawHole(context: Paint, plate: TagPlateDrawing, colour: string): void {
  const hole = new Path2D();
  hole.arc(plate.hole.x, plate.hole.y, plate.hole.radius, 0, 2 * Math.PI);
  if (plate.core === null) stroke(context, hole, colour, 1.5);
  else {
    context.fillStyle = colour;
    context.fill(hole);
  }
}

function outside(body: Path2D, plate: TagPlateDrawing): Path2D {
  const path = new Path2D();
  path.rect(-20, -20, plate.width + 40, plate.height + 40);
  path.addPath(body);
  return path;
}

function stroke(context: Paint, path: Path2D, colour: string, width: number, alpha = 1): void {
  context.globalAlpha = alpha;
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.stroke(path);
  context.globalAlpha = 1;
}
