import { describe, expect, it } from 'vitest';
import { benchTargetPixels, nextOf, readSettings, themes } from '../../../../renderer/app/bench-settings.ts';

describe('what this screen remembers', () => {
  const usual = { theme: 'bench', size: 'desk', pixelsPerMm: null };

  it.each([
    [null, usual],
    ['{broken', usual],
    ['7', usual],
    ['{"theme":"disco","size":"huge","pixelsPerMm":"4"}', usual],
    ['{"theme":"night"}', { ...usual, theme: 'night' }],
    ['{"size":"bench","pixelsPerMm":4.2}', { ...usual, size: 'bench', pixelsPerMm: 4.2 }],
    ['{"pixelsPerMm":4000}', usual],
  ])('%s is read piece by piece', (kept, settings) => {
    expect(readSettings(kept)).toEqual(settings);
  });
});

describe('targets of the bench size', () => {
  it('are 15 mm on a screen that was measured', () => {
    expect(benchTargetPixels(5)).toBe(75);
  });

  it('are never small, and 60 px where nobody has measured', () => {
    expect(benchTargetPixels(2)).toBe(52);
    expect(benchTargetPixels(null)).toBe(60);
  });
});

it('the light goes round and round', () => {
  expect(nextOf(themes, 'bench')).toBe('sunlight');
  expect(nextOf(themes, 'night')).toBe('bench');
});
