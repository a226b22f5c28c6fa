import { systemVolts } from '../conditions.ts';
import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { legs } from './limits.ts';

const dropRange = {
  unit: 'V',
  possible: [-0.5, 48],
  usual: [0, 3],
  because: 'a leg cannot lose more than the system has',
} as const;

export const cableDropSheet = describeSheet({
  id: 'MS-04',
  name: 'Voltage drop of a cable',
  about:
    'What each leg of the starting circuit loses while the engine cranks, beside what a sound cable of its size would lose at that current.',
  shelf: 'Battery, starting, charging',
  takenAt: ['ELEC/CBL', 'ELEC/GND', 'ELEC/SOL', 'ELEC/MSW'],
  leavesOpen: {
    passed: ['a joint that is bad only when hot or shaken', 'broken strands that show only at a heavier current'],
    failed: ['whether joint or cable is at fault, where both lie between the two points'],
  },
  version: 1,
  inputs: {
    drop: { kind: 'number', label: 'Drop of this leg', repeats: 'highest', ...dropRange },
    current: {
      kind: 'number',
      label: 'Current at the same cranking',
      unit: 'A',
      possible: [0, 5_000],
      usual: [20, 2_500],
    },
    leg: { kind: 'choice', label: 'Leg', answers: legs },
    positive: { kind: 'list', label: 'Drops on the positive side', ...dropRange },
    ground: { kind: 'list', label: 'Drops on the ground side', ...dropRange },
    battery: { kind: 'number', label: 'Battery, post to post', unit: 'V', possible: [0, 60] },
    starter: { kind: 'number', label: 'Starter, stud to case', unit: 'V', possible: [0, 60] },
    gauge: { kind: 'text', label: 'Cable gauge (AWG)' },
    area: { kind: 'number', label: 'Copper cross-section', unit: 'mm²', possible: [0.1, 1_000], usual: [0.5, 240] },
    length: { kind: 'number', label: 'Cable length, one way', unit: 'm', possible: [0.01, 100], usual: [0.1, 15] },
    cableTemperature: { kind: 'number', label: 'Cable temperature', unit: '°C', possible: [-50, 150] },
  },
  conditions: { system: systemVolts },
  results: {
    drop: {
      suggests: 'galv',
      usualLimitRule:
        'by the leg: clamp 0.05, cable 0.2, contact 0.3, strap 0.1 V at most in a 12 V system, in proportion for others; common practice',
      unit: 'V',
      formula: 'highest steady drop read',
      fallback: fallbacks.voltageDrop,
      needs: ['drop'],
      main: true,
    },
    resistance: { unit: 'mΩ', formula: 'drop ÷ current', needs: ['drop', 'current'] },
    'positive side': {
      suggests: 'galv',
      usualLimitRule: '0.5 V at most in a 12 V system, in proportion for others; common practice',
      unit: 'V',
      formula: 'sum of its legs',
      fallback: fallbacks.voltageDrop,
      needs: ['positive'],
    },
    'ground side': {
      suggests: 'galv',
      usualLimitRule: '0.3 V at most in a 12 V system, in proportion for others; common practice',
      unit: 'V',
      formula: 'sum of its legs',
      fallback: fallbacks.voltageDrop,
      needs: ['ground'],
    },
    'not accounted for': {
      unit: 'V',
      formula: 'battery − starter − positive side − ground side',
      needs: ['battery', 'starter', 'positive', 'ground'],
    },
    'lost as heat': {
      unit: 'W',
      formula: '(positive side + ground side) × current',
      needs: ['positive', 'ground', 'current'],
    },
    'sound cable would lose': {
      unit: 'V',
      formula: 'resistivity of copper × length ÷ cross-section × current, at the cable’s temperature',
      from: 'ASTM B258 for the gauge, 100 % IACS copper, 0.393 % for each kelvin',
      needs: [['gauge', 'area'], 'length', 'current'],
    },
  },
  cautions: ['CAU-08', 'CAU-38'],
  shown: 'lines',
});
