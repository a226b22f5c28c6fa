import { mapPlane } from '../../calibration/plane-mapping.ts';
import { distance } from '../../geometry/plane.ts';
import type { XY } from '../../geometry/spaces.ts';
import type { CalibratedPlane } from '../../measuring/calibrated-plane.ts';
import type { UnitSystem } from '../../quantities/units.ts';
import type { PrintedPoint, PrintedScaleBar, PrintedTag } from '../model.ts';
import type { Frame } from './frame.ts';
import { tagHeightMm, tagWidthMm } from './tags.ts';

const inchMm = 25.4;
/** A bar longer than this share of the picture's width, or than this, is too much of it. */
const mostShare = 0.28;
const mostMm = 26;
const steps = [1, 2, 5] as const;
const plateHeightMm = 8.6;
const platePaddingMm = 2.6;
const leastPlateMm = 31;
const edgeMm = 2;

/**
 * A length of the measured face as it is seen at the mark. In a face that leans it holds there and along the photo's width;
 * elsewhere in the picture the same length looks longer or shorter, so its words say where it holds.
 *
 * @returns null where no round length fits
 */
export function scaleBar(
  plane: CalibratedPlane,
  at: XY,
  frame: Frame,
  drawn: {
    readonly strokes: readonly (readonly PrintedPoint[])[];
    readonly tags: readonly PrintedTag[];
    readonly scale: number;
  },
  units: UnitSystem,
): PrintedScaleBar | null {
  const { toPlane } = mapPlane(plane.reference);
  const [left, right] = [toPlane({ x: at.x - 0.5, y: at.y }), toPlane({ x: at.x + 0.5, y: at.y })];
  if (!left || !right) return null;
  const paperPerMm = frame.mmPerPixel / distance(left, right);
  const unitMm = units === 'us' ? inchMm : 1;
  const most = Math.min(mostMm, frame.widthMm * mostShare) / (paperPerMm * unitMm);
  if (!(most > 0) || !Number.isFinite(most)) return null;
  const power = 10 ** Math.floor(Math.log10(most));
  const round = steps.map((step) => step * power).findLast((value) => value <= most * (1 + 1e-9));
  if (round === undefined) return null;
  const widthMm = round * unitMm * paperPerMm;
  const text = `${Number(round.toPrecision(1))}\u202f${units === 'us' ? 'in' : 'mm'} at the mark`;
  return { text, widthMm, at: placeOf(Math.max(widthMm + 2 * platePaddingMm, leastPlateMm), frame, drawn) };
}

/** The corner that covers the least of marks and tags; the lower right one where all are free. */
function placeOf(
  plateMm: number,
  frame: Frame,
  {
    strokes,
    tags,
    scale,
  }: { strokes: readonly (readonly PrintedPoint[])[]; tags: readonly PrintedTag[]; scale: number },
): PrintedPoint {
  const [right, bottom] = [frame.widthMm - plateMm - edgeMm, frame.heightMm - plateHeightMm - edgeMm];
  const corners: PrintedPoint[] = [
    [right, bottom],
    [edgeMm, bottom],
    [right, edgeMm],
    [edgeMm, edgeMm],
  ];
  const spots = [
    ...strokes.flat(),
    ...tags.flatMap(({ tag, at: [x, y] }): PrintedPoint[] => {
      const [w, h] = [(tagWidthMm(tag) * scale) / 2, (tagHeightMm * scale) / 2];
      return [
        [x, y],
        [x - w, y - h],
        [x + w, y - h],
        [x - w, y + h],
        [x + w, y + h],
      ];
    }),
  ];
  const covered = corners.map(
    ([x, y]) =>
      spots.filter(([px, py]) => px > x - 1 && px < x + plateMm + 1 && py > y - 1 && py < y + plateHeightMm + 1).length,
  );
  return corners[covered.indexOf(Math.min(...covered))] ?? [right, bottom];
}
