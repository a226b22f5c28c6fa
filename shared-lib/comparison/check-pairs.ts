import type { PointPair } from '../calibration/homography.ts';
import { AppError, type ErrorCode } from '../contract/errors.ts';
import type { Size, XY } from '../geometry/spaces.ts';
import { type Registration, registerByHand } from './register.ts';

const codes: Partial<Readonly<Record<ErrorCode, ErrorCode>>> = {
  'calibration-too-few-points': 'comparison-too-few-points',
  'calibration-points-collinear': 'comparison-points-collinear',
  'calibration-points-crossing': 'comparison-points-crossing',
  'calibration-zero-length': 'comparison-points-collinear',
};

const isOn = ({ x, y }: XY, { width, height }: Size): boolean =>
  x >= -0.5 && y >= -0.5 && x <= width - 0.5 && y <= height - 0.5;

/**
 * Matched points of two photos as they may be kept.
 *
 * @throws AppError 'point-outside-photo', 'comparison-too-few-points', 'comparison-points-collinear', 'comparison-points-crossing'
 */
export function registerPairs(
  pairs: readonly PointPair[],
  photos: { readonly earlier: Size; readonly later: Size },
): Registration {
  for (const { from, to } of pairs) {
    if (!isOn(from, photos.earlier)) throw new AppError('point-outside-photo', { ...from });
    if (!isOn(to, photos.later)) throw new AppError('point-outside-photo', { ...to });
  }
  try {
    return registerByHand(pairs);
  } catch (error) {
    const code = error instanceof AppError ? codes[error.code] : undefined;
    if (code === undefined || !(error instanceof AppError)) throw error;
    throw new AppError(code, { ...error.details }, { cause: error });
  }
}
