import { distance } from '../../geometry/plane.ts';
import type { Size } from '../../geometry/spaces.ts';
import type { CalibrationInput } from '../input.ts';
import { fitPlane, intoPhoto } from '../plane-fit.ts';
import { pairsOf, pointNoisePx } from '../plane-mapping.ts';
import { checkBar } from './check-bar.ts';
import type { FoundCard } from './find-card.ts';

/** How surely a rule is read against the bar, +/- mm. Common practice, no source. */
const ruleReadingMm = 0.25;
/** How far off a printer may be whose sheet nobody has checked, +/- of a length. Common practice, no source. */
const uncheckedShare = 0.01;
/** Paper that is not quite flat, ink that runs, +/- mm. Common practice, no source. */
export const paperMm = 0.1;
/** What a camera's own pictures may still be bent, standard uncertainty of `Lens.bend`. Common practice, no source. */
export const usualBendU = 0.02;
/** What one coefficient leaves of a lens, relative, standard uncertainty. Common practice, no source. */
const bentRest = 0.0003;
const leastClickingPx = 0.05;

/**
 * The found card as a reference of known points.
 *
 * @param barMm  what a rule reads on the sheet's check bar; null where nobody has looked
 */
export function cardCalibration(
  { points, face }: Pick<FoundCard, 'points' | 'face'>,
  photo: Size,
  { barMm, plane }: { readonly barMm: number | null; readonly plane: string },
): Extract<CalibrationInput, { method: 'known-points' }> {
  const printed = (barMm ?? checkBar.mm) / checkBar.mm;
  const reference = {
    method: 'known-points',
    plane,
    card: face,
    points: points.map(({ px, mm }) => ({ px, mm: { x: mm.x * printed, y: mm.y * printed } })),
    toleranceMm: paperMm,
    clickingPx: leastClickingPx,
    lensShare: bentRest,
    lens: { bendU: usualBendU },
    referenceShare: (barMm === null ? uncheckedShare : ruleReadingMm / checkBar.mm) / Math.sqrt(3),
    photo: { width: photo.width, height: photo.height },
  } satisfies CalibrationInput;
  return { ...reference, clickingPx: foundPx(reference) };
}

/** How surely the crossings were found: what the fit leaves over, less what the paper accounts for. */
function foundPx(reference: Extract<CalibrationInput, { method: 'known-points' }>): number {
  const pairs = pairsOf(reference);
  const pointPx = pointNoisePx(reference);
  const fit = fitPlane(pairs, {
    photo: reference.photo ?? { width: 1, height: 1 },
    bend: 0,
    bendU: usualBendU,
    pointPx,
  });
  if (!fit) return 1;
  const squares = pairs.reduce((sum, { from, to }) => sum + distance(intoPhoto(fit, to) ?? from, from) ** 2, 0);
  const leftOver = squares / Math.max(1, 2 * pairs.length - 9);
  return Math.max(leastClickingPx, Math.sqrt(Math.max(0, leftOver - (pointPx ** 2 - reference.clickingPx ** 2))));
}
