import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { average, step, tilt } from './limits.ts';

export const linerProtrusionSheet = describeSheet({
  id: 'MS-14',
  name: 'Liner protrusion',
  about: 'How far each liner stands above the deck at four or more places of the clock, clamped, without its seals.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG/LNR', 'ENG/BLK/CBORE'],
  leavesOpen: {
    passed: ['a flange that settles once it is clamped'],
    failed: ['whether liner, flange or counterbore is at fault'],
  },
  version: 1,
  inputs: {
    heights: {
      kind: 'rows',
      label: 'Heights above the deck',
      row: 'liner, in their order along the deck',
      column: 'place of the clock',
      unit: 'mm',
      possible: [-5, 5],
      usual: [-0.2, 0.4],
    },
  },
  conditions: {
    clamped: { kind: 'choice', label: 'Liner clamped as the maker says', answers: ['yes', 'no'] },
    cleaned: { kind: 'choice', label: 'Counterbore cleaned', answers: ['yes', 'no'] },
  },
  results: {
    average: {
      suggests: 'sunk',
      unit: 'mm',
      formula: 'mean of a liner’s heights',
      fallback: fallbacks.size,
      needs: ['heights'],
      main: true,
      usualLimit: average,
    },
    tilt: {
      suggests: 'misfit',
      unit: 'mm',
      formula: 'highest − lowest height of one liner',
      fallback: fallbacks.size,
      needs: ['heights'],
      main: true,
      usualLimit: tilt,
    },
    step: {
      suggests: 'sunk',
      unit: 'mm',
      formula: 'difference of the averages of neighbours',
      fallback: fallbacks.size,
      needs: ['heights'],
      usualLimit: step,
    },
    range: {
      unit: 'mm',
      formula: 'highest − lowest average under one head',
      fallback: fallbacks.size,
      needs: ['heights'],
    },
  },
  cautions: ['CAU-25'],
  shown: 'bars',
});
