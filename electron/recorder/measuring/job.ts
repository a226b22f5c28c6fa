import type { FoundCard } from '../../../shared-lib/calibration/card/find-card.ts';
import type { Homography } from '../../../shared-lib/calibration/homography.ts';
import type { SuggestedRegistration } from '../../../shared-lib/comparison/register.ts';
import type { ErrorCode, WireError } from '../../../shared-lib/contract/errors.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import type { GrowRequest } from '../../../shared-lib/growing/grow.ts';
import type { Grown } from '../../../shared-lib/growing/grown.ts';
import type { Trace, TraceRequest } from '../../../shared-lib/tracing/trace.ts';

/** What the recorder asks of a measuring child. */
export type MeasuringJob =
  | { readonly kind: 'trace'; readonly path: string; readonly request: TraceRequest }
  /** The patch round a spot. */
  | { readonly kind: 'grow'; readonly path: string; readonly request: GrowRequest }
  /** How the photo `path` lies under the photo `laterPath`. */
  | { readonly kind: 'register'; readonly path: string; readonly laterPath: string }
  | { readonly kind: 'find-card'; readonly path: string }
  /** A photo as seen from another side (a calibrated face square on, an earlier photo as today's camera stood), as a JPEG. */
  | {
      readonly kind: 'straighten';
      readonly path: string;
      readonly width: number;
      readonly height: number;
      readonly toPhoto: Homography;
      readonly outPath: string;
    };

export interface TraceAnswer {
  readonly kind: 'trace';
  readonly trace: Trace;
  readonly photo: { readonly width: number; readonly height: number };
  /** Time for the tracing alone, without opening the photo. */
  readonly tracingMs: number;
}

export interface GrowAnswer {
  readonly kind: 'grow';
  /** Null where nothing stands out. */
  readonly grown: Grown | null;
  readonly photo: { readonly width: number; readonly height: number };
  /** Time for the growing alone, without opening the photo. */
  readonly growingMs: number;
}

export interface RegisterAnswer {
  readonly kind: 'register';
  readonly suggestion: SuggestedRegistration;
}

export interface StraightenAnswer {
  readonly kind: 'straighten';
}

export interface FindCardAnswer {
  readonly kind: 'find-card';
  readonly card: FoundCard | null;
  readonly photo: { readonly width: number; readonly height: number };
  /** Time for the finding alone, without opening the photo. */
  readonly findingMs: number;
}

export type MeasuringAnswer = TraceAnswer | GrowAnswer | RegisterAnswer | StraightenAnswer | FindCardAnswer;
export type FromMeasuringChild =
  | { readonly ok: true; readonly answer: MeasuringAnswer }
  | { readonly ok: false; readonly error: WireError }
  /** A bug; the text is for the log. */
  | { readonly ok: false; readonly fault: string };

/** Thrown inside the child; becomes an AppError outside. */
export class MeasuringRefusal extends Error {
  readonly code: ErrorCode;
  readonly details: Readonly<Record<string, unknown>>;
  constructor(code: ErrorCode, details: Readonly<Record<string, unknown>> = {}) {
    super(code);
    this.code = code;
    this.details = details;
  }
}

/** @throws MeasuringRefusal 'point-outside-photo' for a click off the picture, or one that is no number */
export const checkInside = (
  points: readonly XY[],
  photo: { readonly width: number; readonly height: number },
): void => {
  for (const { x, y } of points) {
    if (x >= -0.5 && y >= -0.5 && x <= photo.width - 0.5 && y <= photo.height - 0.5) continue;
    throw new MeasuringRefusal('point-outside-photo', { x, y, ...photo });
  }
};
