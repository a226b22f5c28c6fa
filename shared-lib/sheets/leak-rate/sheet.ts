import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { dropKinds } from './limits.ts';

const anyRate = [
  ['drops', 'catch'],
  ['time', 'dropsTime'],
] as const;

export const leakRateSheet = describeSheet({
  id: 'MS-19',
  name: 'Leak rate',
  about:
    'Drops counted or fluid caught over a time. A wetted area only shows where it leaks; it is never turned into a rate.',
  shelf: 'Any part',
  takenAt: [],
  leavesOpen: {
    passed: ['a leak that opens only hot, running or under pressure'],
    failed: ['where it comes from: a wet area only leads there'],
  },
  version: 1,
  inputs: {
    drops: { kind: 'number', label: 'Drops counted', unit: '', possible: [0, 100_000], usual: [0, 2_000] },
    dropVolume: { kind: 'number', label: 'Volume of a drop', unit: 'mL', possible: [0.001, 1], usual: [0.02, 0.1] },
    fluid: { kind: 'choice', label: 'Fluid', answers: dropKinds },
    catch: { kind: 'number', label: 'Fluid caught', unit: 'mL', possible: [0, 1_000_000], usual: [0, 20_000] },
    time: { kind: 'number', label: 'Over', unit: 'min', possible: [0.01, 100_000], usual: [0.25, 1_440] },
    runningMinutes: { kind: 'number', label: 'Under pressure each day', unit: 'min', possible: [0, 1_440] },
    spare: {
      kind: 'number',
      label: 'Volume above the low mark',
      unit: 'mL',
      possible: [0, 10_000_000],
      usual: [0, 1_000_000],
    },
    dropsTime: {
      kind: 'number',
      label: 'Drops counted over, if not the same',
      unit: 'min',
      possible: [0.01, 100_000],
      usual: [0.25, 60],
    },
    class: { kind: 'choice', label: 'Class', answers: ['I', 'II', 'III'] },
    wetArea: { kind: 'text', label: 'Wet area' },
    what: {
      kind: 'choice',
      label: 'What leaks',
      answers: ['oil', 'coolant', 'hydraulic oil', 'fuel', 'brake fluid', 'not known'],
    },
  },
  conditions: {},
  results: {
    rate: {
      suggests: 'sealleak',
      unit: 'mL/min',
      formula: 'fluid caught ÷ time, or drops × volume of a drop ÷ time',
      fallback: fallbacks.leakRate,
      needs: anyRate,
      main: true,
    },
    hourly: { unit: 'mL/h', formula: 'rate × 60', fallback: fallbacks.leakRate, needs: anyRate },
    'a day': {
      unit: 'mL',
      formula: 'rate × minutes under pressure each day',
      fallback: fallbacks.leakRate,
      needs: [...anyRate, 'runningMinutes'],
    },
    'a day without a stop': {
      unit: 'gal',
      formula: 'rate × 1440 min',
      from: 'US gallon of 231 cubic inches',
      fallback: fallbacks.leakRate,
      needs: anyRate,
    },
    'hours to the low mark': {
      unit: 'h',
      formula: 'volume above the low mark ÷ hourly loss',
      fallback: fallbacks.leakRate,
      needs: [...anyRate, 'spare'],
    },
    'fuel leak': { suggests: 'sealleak', unit: '', formula: 'any leak of fuel', needs: ['what'], looksFor: true },
  },
  cautions: ['CAU-02', 'CAU-07'],
  shown: 'lines',
});
