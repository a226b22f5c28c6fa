import { z } from 'zod';
import { CalibrationInput } from '../calibration/input.ts';
import type { CalibratedPlane } from '../measuring/calibrated-plane.ts';
import { ImagePoint, type Mark } from '../model/mark.ts';
import { query, step } from './operation.ts';

const id = z.string();

const way = {
  /** Start, way points in their order, end. */
  points: z.array(ImagePoint).min(2).max(60),
  /** A rough line along the crack, which the trace stays near. */
  scribble: z.array(ImagePoint).max(3000).optional(),
  /** Standard uncertainty of the ends, px of the photo. */
  pointPx: z.number().positive().max(100).default(1),
};

/** A face of a part, straightened: a picture, and the way between its pixels and the photo's. */
export interface StraightPicture {
  readonly url: string;
  readonly width: number;
  readonly height: number;
  /** From a pixel of this picture to one of the upright photo: a 3 x 3 matrix row by row. */
  readonly toPhoto: readonly [number, number, number, number, number, number, number, number, number];
  readonly pxPerMm: number;
}

export const measuringOperations = {
  /**
   * The scale of one face in a photo. Computed before it is written and never changed after: a better one is a new one.
   * Marks of the photo that name no plane yet, or an older scale of the same plane, take it.
   */
  'calibration.add': step<CalibratedPlane>()(
    z.strictObject({
      shotId: id,
      /** `photo` is filled in from the shot. */
      reference: CalibrationInput,
      component: z.string().nullable().default(null),
    }),
  ),
  /** What a reference would give, before it is kept. */
  'calibration.try': query<Pick<CalibratedPlane, 'residualsPx' | 'rmsPx' | 'pxPerMm' | 'tiltDegrees'>>()(
    z.strictObject({ shotId: id, reference: CalibrationInput }),
  ),
  /** Follows the dark, thin line between two clicks; the mark is the path it found. */
  'mark.trace': step<Mark>()(z.strictObject({ shotId: id, findingId: id.nullable().default(null), ...way })),
  /** The same trace led another way. */
  'mark.retrace': step<Mark>()(z.strictObject({ id, ...way })),
  /** Finds the outline of a scuffed, scaled or pitted patch from a spot inside it, or a line run over it. */
  'mark.grow': step<Mark>()(
    z.strictObject({
      shotId: id,
      findingId: id.nullable().default(null),
      points: z.array(ImagePoint).min(1).max(3000),
    }),
  ),
  'photo.straighten': query<StraightPicture>()(z.strictObject({ calibrationId: id })),
};
