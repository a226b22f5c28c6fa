import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { usualPressureKpa } from './limits.ts';

export const oilPressureSheet = describeSheet({
  id: 'MS-27',
  name: 'Oil pressure and level',
  about:
    'Pressure on a test gauge, hot, at idle and at rated speed; and how the level changes. Rising oil is fuel or coolant.',
  shelf: 'Crank, oil and fuel',
  takenAt: ['ENG/LUB'],
  leavesOpen: {
    passed: ['a pressure that falls only hot or on slopes'],
    failed: ['whether pump, valve, bearings or a broken jet lets it fall'],
  },
  version: 1,
  inputs: {
    pressure: {
      kind: 'number',
      label: 'Pressure',
      unit: 'kPa',
      possible: [0, 2_000],
      usual: usualPressureKpa,
      repeats: 'lowest',
    },
    idle: {
      kind: 'number',
      label: 'Pressure at idle, hot',
      unit: 'kPa',
      possible: [0, 2_000],
      usual: usualPressureKpa,
      repeats: 'lowest',
    },
    riseTime: {
      kind: 'number',
      label: 'Seconds from the start until it rose',
      unit: 's',
      possible: [0, 600],
      usual: [0, 20],
    },
    rise: {
      kind: 'number',
      label: 'Level rose by',
      unit: 'mL',
      possible: [-1_000_000, 1_000_000],
      usual: [-50_000, 50_000],
    },
    added: { kind: 'number', label: 'Oil added meanwhile', unit: 'mL', possible: [0, 1_000_000] },
    over: { kind: 'number', label: 'Over', unit: 'h', possible: [0.01, 100_000], usual: [0.5, 5_000] },
  },
  conditions: {
    gauge: { kind: 'choice', label: 'Read on', answers: ['test gauge', 'panel gauge'] },
    engine: { kind: 'text', label: 'Engine' },
  },
  results: {
    pressure: {
      suggests: 'lowout',
      unit: 'kPa',
      formula: 'lowest reading',
      fallback: fallbacks.pressure,
      needs: ['pressure'],
      main: true,
    },
    idle: { suggests: 'lowout', unit: 'kPa', formula: 'lowest reading', fallback: fallbacks.pressure, needs: ['idle'] },
    'time to rise': { unit: 's', formula: 'as read', fallback: { absolute: 1 }, needs: ['riseTime'] },
    rise: {
      suggests: 'mixing',
      unit: 'mL/h',
      formula: '(level rose by − oil added) ÷ hours',
      fallback: fallbacks.levelChange,
      needs: ['rise', 'over'],
    },
  },
  cautions: ['CAU-27', 'CAU-35', 'CAU-37'],
  shown: 'lines',
});
