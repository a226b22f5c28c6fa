import { altitude } from '../conditions.ts';
import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { spread } from './limits.ts';

export const compressionSheet = describeSheet({
  id: 'MS-10',
  name: 'Compression',
  about: 'The pressure each cylinder reaches while cranking warm, brought to sea level, and how far they stand apart.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG'],
  leavesOpen: {
    passed: [
      { what: 'a leak that opens only hot', unless: { field: 'coolant', atLeast: 70 } },
      'a crack or gasket leak too small to cost compression',
      'a leak low in the liner, below the rings',
    ],
    failed: ['whether valves, rings, gasket or bore leak'],
  },
  version: 1,
  inputs: {
    raw: {
      kind: 'per-cylinder',
      label: 'Gauge pressure of each cylinder',
      unit: 'bar',
      possible: [0, 80],
      usual: [5, 45],
    },
    speeds: { kind: 'per-cylinder', label: 'Cranking speed at each cylinder', unit: 'rpm', possible: [0, 1_000] },
    strokes: { kind: 'number', label: 'Strokes until it stood still', unit: '', possible: [1, 60] },
  },
  conditions: {
    altitude,
    coolant: { kind: 'number', label: 'Coolant temperature', unit: '°C', possible: [-40, 140] },
    intake: { kind: 'choice', label: 'Intake', answers: ['open', 'closed'] },
    fuel: { kind: 'choice', label: 'Fuel', answers: ['shut', 'not shut'] },
  },
  results: {
    corrected: {
      suggests: 'lowout',
      unit: 'bar',
      formula: '(gauge + air) × sea-level air ÷ air − sea-level air',
      from: 'US Standard Atmosphere 1976',
      fallback: fallbacks.compression,
      needs: ['raw'],
      main: true,
    },
    spread: {
      suggests: 'lowout',
      unit: '%',
      formula: '(highest − lowest) ÷ highest, of the gauge readings',
      fallback: fallbacks.spread,
      needs: ['raw'],
      main: true,
      usualLimit: spread,
    },
    difference: {
      unit: 'bar',
      formula: 'highest − lowest gauge reading',
      fallback: fallbacks.compression,
      needs: ['raw'],
    },
    'lowest of highest': { unit: '%', formula: 'lowest ÷ highest', needs: ['raw'] },
  },
  cautions: ['CAU-08', 'CAU-14', 'CAU-37'],
  shown: 'bars',
});
