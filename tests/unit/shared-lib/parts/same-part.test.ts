import { describe, expect, it } from 'vitest';
import type { FittedPart } from '../../../../shared-lib/model/machine.ts';
import { samePartBetween } from '../../../../shared-lib/parts/same-part.ts';

const stays = [
  { id: 'spring', hours: 4000 },
  { id: 'summer', hours: 4200 },
  { id: 'autumn', hours: null },
  { id: 'winter', hours: 4600 },
];
const fitted = (part: Partial<FittedPart>): FittedPart => ({
  id: 'part',
  machineId: 'machine',
  path: 'STEER/DRAG',
  kind: 'new',
  fittedVisitId: null,
  fittedHours: null,
  removedVisitId: null,
  removedHours: null,
  ...part,
});
const told = (part: Partial<FittedPart>, before: string, after: string, place = 'STEER/DRAG') =>
  samePartBetween(place, before, after, stays, [fitted(part)]);

describe('what stands at a place in two stays', () => {
  it('is another part when it was changed in a stay between them, whichever way round they are asked for', () => {
    expect(told({ fittedVisitId: 'summer' }, 'spring', 'winter')).toBe('another');
    expect(told({ fittedVisitId: 'summer' }, 'winter', 'spring')).toBe('another');
    expect(told({ fittedVisitId: 'spring', removedVisitId: 'autumn' }, 'summer', 'winter')).toBe('another');
  });

  it('may be another when it was changed in one of the two', () => {
    expect(told({ fittedVisitId: 'summer' }, 'summer', 'winter')).toBe('may be another');
    expect(told({ fittedVisitId: 'summer' }, 'spring', 'summer')).toBe('may be another');
    expect(told({ fittedVisitId: 'summer' }, 'summer', 'summer')).toBe('may be another');
  });

  it('is the same when it was changed before both or after both', () => {
    expect(told({ fittedVisitId: 'spring' }, 'summer', 'winter')).toBe('the same');
    expect(told({ fittedVisitId: 'winter' }, 'spring', 'summer')).toBe('the same');
    expect(told({}, 'spring', 'winter')).toBe('the same');
  });

  it('is told by the hours where no stay is named, as far as they are known', () => {
    expect(told({ fittedHours: 4100 }, 'spring', 'summer')).toBe('another');
    expect(told({ fittedHours: 4100 }, 'summer', 'winter')).toBe('the same');
    expect(told({ fittedHours: 4200 }, 'summer', 'winter')).toBe('may be another');
    expect(told({ fittedHours: 4300 }, 'summer', 'autumn')).toBe('may be another');
    expect(told({ fittedHours: 4200 }, 'spring', 'summer')).toBe('may be another');
    expect(told({ fittedHours: 4300 }, 'spring', 'summer')).toBe('the same');
    expect(told({ fittedHours: 4000 }, 'spring', 'spring')).toBe('the same');
    expect(told({ removedHours: 4100 }, 'spring', 'summer')).toBe('another');
  });

  it('is another where the part above or below it was changed, and the same where its neighbour was', () => {
    const between = { fittedVisitId: 'summer' };
    expect(told({ ...between, path: 'STEER' }, 'spring', 'winter')).toBe('another');
    expect(told({ ...between, path: 'ENG/LNR' }, 'spring', 'winter', 'ENG/LNR.3')).toBe('another');
    expect(told({ ...between, path: 'ENG/LNR.2' }, 'spring', 'winter', 'ENG/LNR.3')).toBe('the same');
    expect(told({ ...between, path: 'ENG/LNR.3' }, 'spring', 'winter', 'ENG/LNR.3/IN@zone=UP')).toBe('another');
  });
});
