import { altitude } from '../conditions.ts';
import { describeSheet } from '../sheet-kind.ts';
import { fallIn10Minutes } from './limits.ts';

export const coolingPressureHoldSheet = describeSheet({
  id: 'MS-07',
  name: 'Cooling system, pressure hold',
  about:
    'Pressure pumped on the closed system and what is left of it. With the size of the gas space, how much coolant has gone.',
  shelf: 'Cooling',
  takenAt: ['COOL'],
  leavesOpen: {
    passed: ['a leak that opens only hot, under load or at a higher pressure', 'a leak slower than the test can show'],
    failed: ['where it leaks: outside, into a cylinder or into the oil'],
  },
  version: 1,
  inputs: {
    applied: { kind: 'number', label: 'Pressure applied', unit: 'kPa', possible: [1, 500], usual: [20, 160] },
    after: { kind: 'number', label: 'Pressure after', unit: 'kPa', possible: [0, 500] },
    time: { kind: 'number', label: 'Time', unit: 'min', possible: [0.1, 10_000], usual: [5, 240] },
    gasSpace: {
      kind: 'number',
      label: 'Gas space: top tank, hose and pump',
      unit: 'mL',
      possible: [1, 100_000],
      usual: [100, 10_000],
    },
    temperatureChange: {
      kind: 'number',
      label: 'Change of temperature',
      unit: '°C',
      possible: [-150, 150],
      usual: [-40, 40],
      difference: true,
    },
    startTemperature: { kind: 'number', label: 'Temperature at the start', unit: '°C', possible: [-40, 140] },
    capRating: { kind: 'number', label: 'Rating of the cap', unit: 'kPa', possible: [0, 500] },
    wet: { kind: 'text', label: 'Wet outside at' },
  },
  conditions: { altitude, engine: { kind: 'choice', label: 'Engine', answers: ['cold', 'hot'] } },
  results: {
    fall: {
      suggests: 'sealleak',
      unit: 'kPa per 10 min',
      formula: '(pressure applied − pressure after) ÷ time × 10 min',
      needs: ['applied', 'after', 'time'],
      main: true,
      usualLimit: fallIn10Minutes,
    },
    lost: {
      unit: 'mL',
      formula: 'gas space × ((applied + air) ÷ (after + air) × T after ÷ T before − 1)',
      from: 'gas law; air pressure of the US Standard Atmosphere 1976',
      needs: ['applied', 'after', 'gasSpace'],
    },
    rate: { unit: 'mL/min', formula: 'lost ÷ time', needs: ['applied', 'after', 'gasSpace', 'time'] },
    'in 8 h': {
      unit: 'L',
      formula: 'rate × 480 min, at this pressure',
      needs: ['applied', 'after', 'gasSpace', 'time'],
    },
  },
  cautions: ['CAU-06', 'CAU-29'],
  shown: 'lines',
});
