import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';

const flowNeeds = ['bore', 'rod', 'load', 'drift', 'time'] as const;

export const cylinderDriftSheet = describeSheet({
  id: 'MS-20',
  name: 'Hydraulic cylinder drift',
  about:
    'How far a held load moves with the control in neutral and the engine off, and what flow of oil that is. The load stands over a safe support.',
  shelf: 'Hydraulics',
  takenAt: ['HYD/CYL'],
  leavesOpen: {
    passed: ['a drift that shows only hot or under a heavier load'],
    failed: ['whether seal, valve, lock valve or line lets it sink'],
  },
  version: 1,
  inputs: {
    drift: { kind: 'number', label: 'Drift', unit: 'mm', possible: [0, 20_000], usual: [0, 500], repeats: 'highest' },
    time: { kind: 'number', label: 'Over', unit: 'min', possible: [0.1, 100_000], usual: [1, 120] },
    bore: { kind: 'number', label: 'Cylinder bore', unit: 'mm', possible: [5, 1_500], usual: [25, 300] },
    rod: { kind: 'number', label: 'Rod', unit: 'mm', possible: [2, 1_500], usual: [12, 200] },
    load: { kind: 'choice', label: 'Load', answers: ['pushes rod in', 'pulls rod out'] },
    cylinders: { kind: 'number', label: 'Cylinders that hold it', unit: '', possible: [1, 20] },
    oilVolume: { kind: 'number', label: 'Oil shut in', unit: 'L', possible: [0, 10_000] },
    cooling: { kind: 'number', label: 'Oil cooled by', unit: '°C', possible: [-150, 150], difference: true },
    pressure: { kind: 'number', label: 'Pressure at the bore side', unit: 'MPa', possible: [0, 100], usual: [0.5, 40] },
  },
  conditions: {
    oil: { kind: 'number', label: 'Oil temperature', unit: '°C', possible: [-40, 140] },
    engine: { kind: 'choice', label: 'Engine', answers: ['off', 'running'] },
    control: { kind: 'choice', label: 'Control', answers: ['neutral', 'not neutral'] },
  },
  results: {
    drift: {
      suggests: 'drift',
      unit: 'mm',
      formula: 'as read',
      fallback: fallbacks.drift,
      needs: ['drift'],
      main: true,
    },
    'drift in 10 min': {
      unit: 'mm',
      formula: 'drift ÷ time × 10 min',
      fallback: fallbacks.drift,
      needs: ['drift', 'time'],
    },
    area: {
      unit: 'cm²',
      formula: 'π ÷ 4 × bore² where the load pushes the rod in; π ÷ 4 × (bore² − rod²) where it pulls it out',
      needs: ['bore', 'rod', 'load'],
    },
    volume: { unit: 'mL', formula: 'area × drift', needs: ['bore', 'rod', 'load', 'drift'] },
    flow: { unit: 'mL/min', formula: 'area × drift ÷ time', needs: flowNeeds },
    'flow, all': { unit: 'mL/min', formula: 'flow × cylinders', needs: [...flowNeeds, 'cylinders'] },
    'gland alone would need': { unit: 'mL', formula: 'π ÷ 4 × rod² × drift', needs: ['rod', 'load', 'drift'] },
    'cooling alone': {
      unit: 'mL',
      formula: 'oil shut in × 0.0007 for each kelvin',
      from: 'common practice, no source',
      needs: ['oilVolume', 'cooling'],
    },
    'pushing force': { unit: 'kN', formula: 'pressure × bore area', needs: ['pressure', 'bore'] },
    'pulling force': { unit: 'kN', formula: 'pressure × (bore area − rod area)', needs: ['pressure', 'bore', 'rod'] },
    'rod side if blocked': {
      unit: 'MPa',
      formula: 'pressure × bore area ÷ (bore area − rod area)',
      needs: ['pressure', 'bore', 'rod'],
    },
  },
  cautions: ['CAU-01', 'CAU-02', 'CAU-03', 'CAU-22'],
  shown: 'lines',
});
