import { Shape } from 'react-konva';
import { boxesMeet, boxHolds } from '../../../shared-lib/geometry/plane.ts';
import type { Box, Size, XY } from '../../../shared-lib/geometry/spaces.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';
import type { StageLabel } from '../stage-scene.ts';

interface LabelsProps {
  readonly labels: readonly StageLabel[];
  readonly view: View;
  readonly size: Size;
  readonly look: Look;
  /** What the words keep off: the stamped tags. */
  readonly avoid: readonly Box[];
}

const typePx = 17;
const paddingX = 9;
const bandHeight = 28;
/** Right of and below the spot, so that neither the spot nor the mark's own line is covered. */
const asidePx = 16;

/** Words beside a mark, each on a dark band: never bare text over a photo. */
export function Labels({ labels, view, size, look, avoid }: LabelsProps) {
  return (
    <Shape
      listening={false}
      sceneFunc={({ _context: context }) => {
        for (const label of labels) drawLabel(context, label, { view, size, look, avoid });
      }}
    />
  );
}

type Setting = Omit<LabelsProps, 'labels'>;

function drawLabel(context: Paint, { at, text }: StageLabel, { view, size, look, avoid }: Setting): void {
  const spot = toScreen(view, at);
  // A spot off the stage has no words on it.
  if (spot.x < 0 || spot.y < 0 || spot.x > size.width || spot.y > size.height) return;
  const scale = look.tagScale;
  context.save();
  context.font = `600 ${typePx * scale}px ${look.labelFont}`;
  const width = context.measureText(text).width + 2 * paddingX * scale;
  const band = { width, height: bandHeight * scale };
  const { left, top } = placeFor(spot, band, asidePx * scale, size, avoid);
  context.fillStyle = look.backdrop;
  context.fillRect(left, top, band.width, band.height);
  context.fillStyle = look.line;
  context.textBaseline = 'middle';
  context.fillText(text, left + paddingX * scale, top + band.height / 2 + 1);
  context.restore();
}

/** Right below the spot, or the first other corner round it that is free and on the stage. */
function placeFor(spot: XY, band: Size, aside: number, stage: Size, avoid: readonly Box[]): Box {
  const boxAt = (right: boolean, below: boolean): Box => {
    const left = right ? spot.x + aside : spot.x - aside - band.width;
    const top = below ? spot.y + aside : spot.y - aside - band.height;
    return { left, top, right: left + band.width, bottom: top + band.height };
  };
  const places = [boxAt(true, true), boxAt(false, true), boxAt(true, false), boxAt(false, false)] as const;
  const onStage = places.filter((box) => boxHolds({ left: 0, top: 0, right: stage.width, bottom: stage.height }, box));
  return onStage.find((box) => !avoid.some((other) => boxesMeet(box, other))) ?? onStage[0] ?? places[0];
}
