import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { inletVacuum } from './limits.ts';

export const hydraulicPressureSheet = describeSheet({
  id: 'MS-25',
  name: 'Hydraulic pressure and flow',
  about:
    'Relief pressure with hot oil, the flow that a cylinder’s time tells, and how much of it is left under load. Gauges and hoses are rated above relief; a pump is never shut off without one.',
  shelf: 'Hydraulics',
  takenAt: ['HYD/PUMPH', 'HYD/RV', 'HYD/CYL'],
  leavesOpen: {
    passed: ['a fault that shows only hot or at another speed'],
    failed: ['whether pump, relief valve or a leak further on is to blame'],
  },
  version: 1,
  inputs: {
    relief: {
      kind: 'number',
      label: 'Relief pressure',
      unit: 'MPa',
      possible: [0, 100],
      usual: [3, 42],
      repeats: 'lowest',
    },
    bore: { kind: 'number', label: 'Cylinder bore', unit: 'mm', possible: [5, 1_500], usual: [25, 300] },
    rod: { kind: 'number', label: 'Rod, if it is timed coming in', unit: 'mm', possible: [2, 1_500] },
    stroke: { kind: 'number', label: 'Stroke', unit: 'mm', possible: [1, 20_000], usual: [50, 3_000] },
    time: { kind: 'number', label: 'Time for the stroke', unit: 's', possible: [0.1, 3_600], usual: [0.5, 60] },
    cylinders: { kind: 'number', label: 'Cylinders that move together', unit: '', possible: [1, 20] },
    loaded: { kind: 'number', label: 'Flow under load', unit: 'L/min', possible: [0, 5_000], usual: [1, 500] },
    unloaded: {
      kind: 'number',
      label: 'Flow without load, same speed',
      unit: 'L/min',
      possible: [0.01, 5_000],
      usual: [1, 500],
    },
    inletVacuum: {
      kind: 'number',
      label: 'Suction at the pump inlet',
      unit: 'kPa',
      possible: [0, 101],
      usual: [0, 60],
    },
    fluidCode: { kind: 'text', label: 'Cleanliness code from a laboratory (ISO 4406)' },
  },
  conditions: { oil: { kind: 'number', label: 'Oil temperature', unit: '°C', possible: [-40, 140] } },
  results: {
    relief: {
      suggests: 'lowout',
      unit: 'MPa',
      formula: 'lowest reading',
      fallback: fallbacks.pressure,
      needs: ['relief'],
      main: true,
    },
    flow: {
      unit: 'L/min',
      formula: 'area × stroke × cylinders ÷ time',
      fallback: fallbacks.current,
      needs: ['bore', 'stroke', 'time'],
    },
    'left under load': {
      unit: '%',
      formula: 'flow under load ÷ flow without load',
      fallback: fallbacks.spread,
      needs: ['loaded', 'unloaded'],
    },
    'inlet vacuum': {
      suggests: 'restrict',
      unit: 'kPa',
      formula: 'as read',
      fallback: fallbacks.pressureHeld,
      needs: ['inletVacuum'],
      usualLimit: inletVacuum,
    },
  },
  cautions: ['CAU-02', 'CAU-03', 'CAU-04'],
  shown: 'lines',
});
