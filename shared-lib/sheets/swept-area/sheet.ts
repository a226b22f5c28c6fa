import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';

const area = { kind: 'number', unit: 'mm²', possible: [0, 1e9] } as const;
const size = { kind: 'number', unit: 'mm', possible: [0, 20_000] } as const;

export const sweptAreaSheet = describeSheet({
  id: 'MS-32',
  name: 'Coverage of a swept area',
  about:
    'How much of the face a seal, ring or shoe runs over is scored, worn or bare, from areas measured on the part or on a scaled photo.',
  shelf: 'Any part',
  takenAt: [],
  leavesOpen: { passed: ['anything outside the surface that was looked at'], failed: ['how deep it goes'] },
  version: 1,
  inputs: {
    marked: { label: 'Marked area', ...area },
    markedParts: { kind: 'list', label: 'Marked areas, one by one', unit: 'mm²', possible: [0, 1e9] },
    whole: { label: 'Whole swept area', possible: [0.01, 1e9], kind: 'number', unit: 'mm²' },
    diameter: { label: 'Diameter', ...size, possible: [1, 20_000] },
    swept: { label: 'Swept length', ...size, possible: [0.1, 20_000] },
  },
  conditions: {
    seen: { kind: 'number', label: 'Share of the face that could be seen', unit: '%', possible: [1, 100] },
  },
  results: {
    coverage: {
      suggests: 'score',
      unit: '%',
      formula: 'marked area ÷ whole swept area; of a cylinder π × diameter × swept length',
      fallback: fallbacks.coverage,
      needs: [
        ['marked', 'markedParts'],
        ['whole', 'diameter'],
        ['whole', 'swept'],
      ],
      main: true,
    },
    'whole area': { unit: 'mm²', formula: 'π × diameter × swept length', needs: ['diameter', 'swept'] },
    'at most': {
      unit: '%',
      formula: 'coverage with all that could not be seen counted as marked',
      needs: [['marked', 'markedParts'], ['whole', 'diameter'], ['whole', 'swept'], 'seen'],
    },
  },
  cautions: [],
  shown: 'lines',
});
