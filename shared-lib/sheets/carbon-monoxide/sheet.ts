import { describeSheet } from '../sheet-kind.ts';
import { breathed } from './limits.ts';

export const carbonMonoxideSheet = describeSheet({
  id: 'MS-30',
  name: 'Carbon monoxide spot reading',
  about:
    'Carbon monoxide in the air people breathe: at the seat, in the cab, in the shed. A spot reading is one moment; limits are means over a shift.',
  shelf: 'Crank, oil and fuel',
  takenAt: ['ENG/EXH'],
  leavesOpen: { passed: ['gas in another place, with another load or wind'], failed: ['where it gets in'] },
  version: 1,
  inputs: {
    reading: { kind: 'list', label: 'Carbon monoxide', unit: 'ppm', possible: [0, 100_000], usual: [0, 500] },
    background: { kind: 'number', label: 'Outdoors, before', unit: 'ppm', possible: [0, 1_000] },
    minutes: { kind: 'number', label: 'Engine running for', unit: 'min', possible: [0, 1_440] },
    where: { kind: 'choice', label: 'Where', answers: ['at the seat', 'in the cab', 'in the shed', 'in the exhaust'] },
  },
  conditions: { doors: { kind: 'choice', label: 'Doors and windows', answers: ['open', 'closed'] } },
  results: {
    'carbon monoxide': {
      unit: 'ppm',
      formula: 'highest reading',
      fallback: { share: 0.1 },
      needs: ['reading'],
      main: true,
      usualLimit: breathed,
    },
    'above outdoors': {
      unit: 'ppm',
      formula: 'highest reading − outdoors',
      fallback: { share: 0.1 },
      needs: ['reading', 'background'],
    },
  },
  cautions: ['CAU-09'],
  shown: 'lines',
});
