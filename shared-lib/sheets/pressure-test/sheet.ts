import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { usualTestC, usualTestKpa } from './limits.ts';

export const pressureTestSheet = describeSheet({
  id: 'MS-29',
  name: 'Pressure test of a head or block',
  about:
    'The water passages are closed off, filled with warm water or held under it, and put under pressure. Bubbles show where; a fall without bubbles is the fixture or a place not watched.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG/HD', 'ENG/BLK'],
  leavesOpen: {
    passed: [
      { what: 'a crack that opens only hot', unless: { field: 'temperature', atLeast: 70 } },
      'a crack that opens only clamped or under combustion',
      'a crack that does not reach the tested passages',
    ],
    failed: ['what cracked it'],
  },
  version: 1,
  inputs: {
    pressure: { kind: 'number', label: 'Test pressure', unit: 'kPa', possible: [1, 2_000], usual: usualTestKpa },
    after: { kind: 'number', label: 'Pressure after', unit: 'kPa', possible: [0, 2_000] },
    time: { kind: 'number', label: 'Time', unit: 'min', possible: [0.1, 1_440], usual: [5, 120] },
    bubbles: { kind: 'choice', label: 'Bubbles or weeping', answers: ['none', 'seen'] },
    where: { kind: 'text', label: 'Where' },
    temperature: { kind: 'number', label: 'Water temperature', unit: '°C', possible: [0, 100], usual: usualTestC },
    mostAllowed: { kind: 'number', label: 'Most the maker allows', unit: 'kPa', possible: [1, 2_000] },
  },
  conditions: { fixture: { kind: 'choice', label: 'Fixture proved tight', answers: ['yes', 'no'] } },
  results: {
    'leak path': {
      suggests: 'crack',
      unit: '',
      formula: 'bubbles or weeping under pressure',
      needs: ['bubbles'],
      main: true,
      looksFor: true,
    },
    fall: {
      unit: 'kPa per 10 min',
      formula: '(test pressure − pressure after) ÷ time × 10 min',
      fallback: fallbacks.pressureHeld,
      needs: ['pressure', 'after', 'time'],
    },
  },
  cautions: ['CAU-29', 'CAU-12'],
  shown: 'lines',
});
