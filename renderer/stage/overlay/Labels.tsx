import { Shape } from 'react-konva';
import type { Size } from '../../../shared-lib/geometry/spaces.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';
import type { StageLabel } from '../stage-scene.ts';

interface LabelsProps {
  readonly labels: readonly StageLabel[];
  readonly view: View;
  readonly size: Size;
  readonly look: Look;
}

const typePx = 17;
const paddingX = 9;
const bandHeight = 28;
/** Right of and below the spot, so that neither the spot nor the mark's own line is covered. */
const asidePx = 16;

/** Words beside a mark, each on a dark band: never bare text over a photo. */
export function Labels({ labels, view, size, look }: LabelsProps) {
  return (
    <Shape
      listening={false}
      sceneFunc={({ _context: context }) => {
        for (const label of labels) drawLabel(context, label, view, size, look);
      }}
    />
  );
}

function drawLabel(context: Paint, { at, text }: StageLabel, view: View, size: Size, look: Look): void {
  const spot = toScreen(view, at);
  const scale = look.tagScale;
  context.save();
  context.font = `600 ${typePx * scale}px ${look.labelFont}`;
  const width = context.measureText(text).width + 2 * paddingX * scale;
  const height = bandHeight * scale;
  const aside = asidePx * scale;
  // A spot off the stage has no words on it.
  if (spot.x < 0 || spot.y < 0 || spot.x > size.width || spot.y > size.height) {
    context.restore();
    return;
  }
  const left = spot.x + aside + width > size.width ? spot.x - aside - width : spot.x + aside;
  const top = spot.y + aside + height > size.height ? spot.y - aside - height : spot.y + aside;
  context.fillStyle = look.backdrop;
  context.fillRect(left, top, width, height);
  context.fillStyle = look.line;
  context.textBaseline = 'middle';
  context.fillText(text, left + paddingX * scale, top + height / 2 + 1);
  context.restore();
}
