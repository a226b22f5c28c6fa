import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { mostSizeMm } from './limits.ts';

export const sizeAgainstLimitSheet = describeSheet({
  id: 'MS-31',
  name: 'A size against its limit',
  about: 'Any size, gap, run-out or thickness that no other sheet asks for, with the limit it is held against.',
  shelf: 'Any part',
  takenAt: [],
  leavesOpen: { passed: ['a fault that sizes do not show'], failed: ['what wore it'] },
  version: 1,
  inputs: {
    what: { kind: 'text', label: 'What was measured' },
    size: { kind: 'list', label: 'Size', unit: 'mm', possible: [-mostSizeMm, mostSizeMm] },
    whenNew: { kind: 'number', label: 'Size when new', unit: 'mm', possible: [-mostSizeMm, mostSizeMm] },
    temperature: { kind: 'number', label: 'Temperature of the part', unit: '°C', possible: [-60, 1_000] },
    metal: { kind: 'choice', label: 'Metal', answers: ['iron', 'aluminium', 'steel'] },
  },
  conditions: {},
  results: {
    smallest: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'smallest reading, brought to 20 °C where temperature and metal are known',
      fallback: fallbacks.size,
      needs: ['size'],
      main: true,
    },
    largest: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'largest reading, brought to 20 °C where temperature and metal are known',
      fallback: fallbacks.size,
      needs: ['size'],
      main: true,
    },
    spread: { unit: 'mm', formula: 'largest − smallest reading', fallback: fallbacks.size, needs: ['size'] },
    change: {
      unit: 'mm',
      formula: 'the reading furthest from new − size when new',
      fallback: fallbacks.size,
      needs: ['size', 'whenNew'],
    },
  },
  cautions: [],
  shown: 'lines',
});
