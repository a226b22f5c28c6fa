/**
 * The side a piston is pushed to on the power stroke, looking from the drive end towards the free end.
 *
 * @param rotation  as seen from the free end
 * @returns  right for clockwise, left for counter-clockwise; the same side for both banks of a V
 * Source: common practice, no source (the rod leans with the crankpin on the way down; handbook 2.2).
 */
export function thrustSide(rotation: 'CW' | 'CCW'): 'right' | 'left' {
  return rotation === 'CW' ? 'right' : 'left';
}
