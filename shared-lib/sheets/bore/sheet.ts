import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { outOfRound, taper, wear } from './limits.ts';

export const boreSheet = describeSheet({
  id: 'MS-12',
  name: 'Bore',
  about:
    'Diameters from the top of ring travel down, each in two or more directions, thrust direction first: wear, taper, out-of-round and the oversize that would clean it up. Two-point gauging does not see a three-lobed bore.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG/LNR', 'ENG/BLK/BORE'],
  leavesOpen: { passed: ['wear between the measured points'], failed: ['what wore it: dirt, heat or want of oil'] },
  version: 1,
  inputs: {
    nominal: { kind: 'number', label: 'Diameter when new', unit: 'mm', possible: [5, 1_000], usual: [50, 300] },
    diameters: {
      kind: 'rows',
      label: 'Diameters',
      row: 'depth from the top',
      column: 'direction, thrust first',
      unit: 'mm',
      possible: [5, 1_000],
    },
    depths: { kind: 'list', label: 'Depths', unit: 'mm', possible: [0, 2_000] },
    oneSided: {
      kind: 'number',
      label: 'Wear on one side, from the unworn ridge',
      unit: 'mm',
      possible: [0, 10],
      usual: [0, 1],
    },
    steps: { kind: 'list', label: 'Oversizes to be had', unit: 'mm', possible: [0.01, 10], usual: [0.1, 2] },
  },
  conditions: {
    temperature: { kind: 'number', label: 'Temperature of the block', unit: '°C', possible: [-40, 120] },
  },
  results: {
    wear: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'largest diameter − diameter when new',
      fallback: fallbacks.size,
      needs: ['diameters', 'nominal'],
      main: true,
      usualLimit: wear,
    },
    taper: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'largest − smallest diameter down one direction, the worst direction',
      from: 'two-direction, three-level definition of engine service texts',
      fallback: fallbacks.size,
      needs: ['diameters'],
      main: true,
      usualLimit: taper,
    },
    'out of round': {
      suggests: 'wear',
      unit: 'mm',
      formula: 'largest − smallest diameter at one depth, the worst depth',
      from: 'two-direction, three-level definition of engine service texts',
      fallback: fallbacks.size,
      needs: ['diameters'],
      main: true,
      usualLimit: outOfRound,
    },
    'next oversize': {
      unit: 'mm',
      formula:
        'smallest step with new diameter + step ≥ the larger of largest diameter and new diameter + 2 × one-sided wear, + 0.05',
      needs: ['diameters', 'nominal', 'steps'],
    },
  },
  cautions: ['CAU-25'],
  shown: 'bore',
});
