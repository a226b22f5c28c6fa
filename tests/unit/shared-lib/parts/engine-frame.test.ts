import { describe, expect, it } from 'vitest';
import { type EngineSide, type MachineSide, machineSideOf } from '../../../../shared-lib/parts/machine-frame.ts';
import { thrustSide } from '../../../../shared-lib/parts/thrust-side.ts';

/**
 * The side force on a piston, from the slider-crank itself. Seen from the free end: x to the right, y up; the crankpin has
 * turned a quarter turn past top dead centre on the power stroke.
 */
function pushedToSeenFromFreeEnd(rotation: 'CW' | 'CCW'): 'left' | 'right' {
  const crank = 1;
  const rod = 3;
  const pin = { x: rotation === 'CW' ? crank : -crank, y: 0 };
  const piston = { x: 0, y: Math.sqrt(rod * rod - crank * crank) };
  // The rod is in compression and pushes the piston along the line from crankpin to piston pin.
  const alongX = (piston.x - pin.x) / rod;
  return alongX < 0 ? 'left' : 'right';
}

describe('the thrust side', () => {
  it.each(['CW', 'CCW'] as const)('is where the rod pushes the piston, turning %s', (rotation) => {
    const fromDriveEnd = pushedToSeenFromFreeEnd(rotation) === 'left' ? 'right' : 'left';
    expect(thrustSide(rotation)).toBe(fromDriveEnd);
  });

  // Source: the handbook's 2.2.
  it('is the right for a clockwise engine', () => {
    expect(thrustSide('CW')).toBe('right');
  });
});

/** Turns a direction (x to the machine's right, y forward) clockwise seen from above. */
function turned(side: EngineSide, headingDegrees: number): MachineSide {
  const directions: Record<EngineSide, [number, number]> = {
    'free end': [0, 1],
    right: [1, 0],
    'drive end': [0, -1],
    left: [-1, 0],
  };
  const [x, y] = directions[side];
  const angle = (headingDegrees * Math.PI) / 180;
  const right = Math.round(x * Math.cos(angle) + y * Math.sin(angle));
  const forward = Math.round(-x * Math.sin(angle) + y * Math.cos(angle));
  if (forward === 1) return 'front';
  if (forward === -1) return 'rear';
  return right === 1 ? 'right' : 'left';
}

describe('a side of the engine on the machine', () => {
  const cases = (['free end', 'right', 'drive end', 'left'] as const).flatMap((side) =>
    ([0, 90, 180, 270] as const).map((heading) => [side, heading] as const),
  );

  it.each(cases)('%s with the engine turned %s°', (side, heading) => {
    expect(machineSideOf(side, heading)).toBe(turned(side, heading));
  });

  // Source: the handbook's 2.2: in forklifts the engine faces backwards.
  it('swaps left and right when the engine faces backwards', () => {
    expect(machineSideOf('left', 180)).toBe('right');
    expect(machineSideOf('free end', 180)).toBe('rear');
  });
});
