import { Shape } from 'react-konva';
import type { ScreenPoint } from '../../../shared-lib/geometry/spaces.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';

interface CrossHairProps {
  readonly at: ScreenPoint;
  readonly look: Look;
}

/** Four arms with a free middle: where the keyboard's hand is. */
export function CrossHair({ at, look }: CrossHairProps) {
  return <Shape listening={false} sceneFunc={({ _context }) => drawCrossHair(_context, at, look, 6, 26)} />;
}

export function drawCrossHair(
  context: Paint,
  at: { x: number; y: number },
  look: Look,
  from: number,
  to: number,
): void {
  context.save();
  context.lineCap = 'butt';
  for (const [colour, width] of [
    [look.edge, 5],
    [look.halo, 4],
    [look.line, 1.5],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      context.moveTo(at.x + dx * from, at.y + dy * from);
      context.lineTo(at.x + dx * to, at.y + dy * to);
    }
    context.stroke();
  }
  context.restore();
}
