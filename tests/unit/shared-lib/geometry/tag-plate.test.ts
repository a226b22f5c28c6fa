import { describe, expect, test } from 'vitest';
import type { Tier } from '../../../../shared-lib/contract/standing.ts';
import { drawTagPlate } from '../../../../shared-lib/geometry/tag-plate.ts';
import { findingStates } from '../../../../shared-lib/model/finding.ts';

const tiers: readonly Tier[] = [0, 1, 2, 3, 4];
const plates = tiers.flatMap((tier) =>
  findingStates.map((state) => ({ tier, state, plate: drawTagPlate({ number: 3, tier, state }) })),
);

describe('the stamped tag', () => {
  test('is 45 by 30, wider when suspected or not examined, and grows with the number', () => {
    expect(drawTagPlate({ number: 3, tier: 2, state: 'confirmed' })).toMatchObject({ width: 45, height: 30 });
    expect(drawTagPlate({ number: 3, tier: 2, state: 'suspected' }).width).toBe(54);
    expect(drawTagPlate({ number: 3, tier: 2, state: 'not-examined' }).width).toBe(50);
    expect(drawTagPlate({ number: 412, tier: 2, state: 'confirmed' }).width).toBeGreaterThan(
      drawTagPlate({ number: 12, tier: 2, state: 'confirmed' }).width,
    );
  });

  test('no tier and state can be taken for another, even in black and white', () => {
    const looks = plates
      .filter(({ state }) => state !== 'none-found')
      .map(({ plate }) => JSON.stringify([plate.core, plate.lines, plate.label.text]));
    expect(new Set(looks).size).toBe(15);
  });

  test('a question mark and a dash for suspected only', () => {
    for (const { state, plate } of plates) {
      expect(plate.label.text).toBe(state === 'suspected' ? '3?' : '3');
      expect(plate.lines.some((line) => line.dash !== null)).toBe(state === 'suspected');
    }
  });

  test('the right end is open for not examined only', () => {
    for (const { state, plate } of plates) {
      expect(plate.lines.some((line) => !line.d.endsWith('Z'))).toBe(state === 'not-examined');
    }
  });

  test('none found is a hollow hairline whatever the tier', () => {
    for (const { state, plate } of plates) {
      expect(plate.isHollow).toBe(state === 'none-found');
      if (state === 'none-found') {
        expect(plate.core).toBeNull();
        expect(plate.lines.map(({ width }) => width)).toEqual([1]);
      }
    }
  });

  test('only do not operate is solid', () => {
    for (const { tier, state, plate } of plates) expect(plate.core !== null).toBe(tier === 0 && state !== 'none-found');
  });
});
