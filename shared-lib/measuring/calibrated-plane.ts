import { CalibrationInput } from '../calibration/input.ts';
import { mapPlane, type PlaneMapping } from '../calibration/plane-mapping.ts';
import { distance } from '../geometry/plane.ts';
import type { Calibration } from '../model/mark.ts';

/** What is kept of a calibration beside its plane's name and its way. */
export interface KeptCalibration {
  readonly reference: CalibrationInput;
  /** The part whose face it is; a mark of another part is warned about. Null where nobody has said. */
  readonly component: string | null;
}

/** A calibration with what follows from it. */
export interface CalibratedPlane extends Calibration, KeptCalibration {
  /** How far each set point lies from where the fit puts it, px. Empty where nothing is left over. */
  readonly residualsPx: readonly number[];
  readonly rmsPx: number | null;
  /** Pixels of the photo to a millimetre of the plane, in the middle of the reference. */
  readonly pxPerMm: number;
  /** How far the plane leans from the photo; null where the reference does not tell. */
  readonly tiltDegrees: number | null;
}

/** @throws Error for a body that is no calibration: only the recorder writes them */
export function keptCalibration({ body }: Pick<Calibration, 'body'>): KeptCalibration {
  const { component = null, ...reference } = body;
  return { reference: CalibrationInput.parse(reference), component: component === null ? null : String(component) };
}

/** @throws AppError 'calibration-...': the reference is none */
export function calibratedPlane(calibration: Calibration): CalibratedPlane {
  const kept = keptCalibration(calibration);
  const mapping = mapPlane(kept.reference);
  const { residualsPx, tilt } = mapping;
  return {
    ...calibration,
    ...kept,
    residualsPx,
    rmsPx:
      residualsPx.length === 0 ? null : Math.sqrt(residualsPx.reduce((sum, r) => sum + r * r, 0) / residualsPx.length),
    pxPerMm: scaleAtReference(mapping),
    tiltDegrees: tilt === null ? null : (tilt * 180) / Math.PI,
  };
}

/** The mean of both directions; they differ where the plane leans. */
function scaleAtReference({ referenceAt, toPlane }: PlaneMapping): number {
  const { x, y } = referenceAt;
  const across = [toPlane({ x: x - 0.5, y }), toPlane({ x: x + 0.5, y })] as const;
  const down = [toPlane({ x, y: y - 0.5 }), toPlane({ x, y: y + 0.5 })] as const;
  const [mmAcross, mmDown] = [across, down].map(([a, b]) => (a && b ? distance(a, b) : Number.NaN));
  return 2 / ((mmAcross ?? Number.NaN) + (mmDown ?? Number.NaN));
}
