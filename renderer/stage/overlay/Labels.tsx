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
        const taken = [...avoid];
        const spots = labels.map(({ at }) => toScreen(view, at));
        const middle = {
          x: spots.reduce((sum, { x }) => sum + x, 0) / spots.length,
          y: spots.reduce((sum, { y }) => sum + y, 0) / spots.length,
        };
        for (const label of labels) {
          const box = drawLabel(context, label, { view, size, look, avoid: taken, middle });
          if (box) taken.push(box);
        }
      }}
    />
  );
}

/** `middle`: of all the spots; words stand on the side away from it. */
type Setting = Omit<LabelsProps, 'labels'> & { readonly middle: XY };

function drawLabel(context: Paint, { at, text }: StageLabel, { view, size, look, avoid, middle }: Setting): Box | null {
  const spot = toScreen(view, at);
  // A spot off the stage has no words on it.
  if (spot.x < 0 || spot.y < 0 || spot.x > size.width || spot.y > size.height) return null;
  const scale = look.tagScale;
  context.save();
  context.font = `600 ${typePx * scale}px ${look.labelFont}`;
  const width = context.measureText(text).width + 2 * paddingX * scale;
  const band = { width, height: bandHeight * scale };
  const box = placeFor(spot, middle, band, asidePx * scale, size, avoid);
  const { left, top } = box;
  context.fillStyle = look.backdrop;
  context.fillRect(left, top, band.width, band.height);
  context.fillStyle = look.line;
  context.textBaseline = 'middle';
  context.fillText(text, left + paddingX * scale, top + band.height / 2 + 1);
  context.restore();
  return box;
}

/** Away from the middle, right below where there is none; or the first other corner that is free and on the stage. */
function placeFor(spot: XY, middle: XY, band: Size, aside: number, stage: Size, avoid: readonly Box[]): Box {
  const boxAt = (right: boolean, below: boolean): Box => {
    const left = right ? spot.x + aside : spot.x - aside - band.width;
    const top = below ? spot.y + aside : spot.y - aside - band.height;
    return { left, top, right: left + band.width, bottom: top + band.height };
  };
  const [right, below] = [spot.x >= middle.x - 1, spot.y >= middle.y - 1];
  const places = [boxAt(right, below), boxAt(!right, below), boxAt(right, !below), boxAt(!right, !below)] as const;
  const onStage = places.filter((box) => boxHolds({ left: 0, top: 0, right: stage.width, bottom: stage.height }, box));
  return onStage.find((box) => !avoid.some((other) => boxesMeet(box, other))) ?? onStage[0] ?? places[0];
}
