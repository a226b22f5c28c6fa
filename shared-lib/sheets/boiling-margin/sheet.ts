import { altitude } from '../conditions.ts';
import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { margin } from './limits.ts';

export const boilingMarginSheet = describeSheet({
  id: 'MS-08',
  name: 'Margin to boiling',
  about:
    'At which temperature this coolant boils under this cap at this altitude, and how far the hottest reading stays below. The cap counts as measured, not as stamped.',
  shelf: 'Cooling',
  takenAt: ['COOL'],
  leavesOpen: {
    passed: ['boiling at the exhaust seats, which run hotter than any gauge'],
    failed: ['whether cap, coolant or heat is to blame'],
  },
  version: 1,
  inputs: {
    cap: { kind: 'number', label: 'Cap opens at, measured', unit: 'kPa', possible: [0, 500], usual: [0, 160] },
    glycol: { kind: 'number', label: 'Glycol by volume', unit: '%', possible: [0, 100], usual: [0, 60] },
    highest: {
      kind: 'number',
      label: 'Highest coolant temperature seen',
      unit: '°C',
      possible: [-40, 200],
      usual: [40, 120],
      repeats: 'highest',
    },
    radiatorIn: { kind: 'number', label: 'Radiator, where the coolant enters', unit: '°C', possible: [-40, 200] },
    radiatorOut: { kind: 'number', label: 'Radiator, where it leaves', unit: '°C', possible: [-40, 200] },
    air: { kind: 'number', label: 'Air before the radiator', unit: '°C', possible: [-60, 80] },
    where: {
      kind: 'choice',
      label: 'Read with',
      answers: ['sender in the coolant', 'infrared on metal', 'thermometer in the neck'],
    },
  },
  conditions: {
    altitude,
    glycolKind: { kind: 'choice', label: 'Glycol', answers: ['ethylene', 'propylene', 'not known'] },
  },
  results: {
    boils: {
      unit: '°C',
      formula: 'boiling temperature of water at (air + cap) ÷ mole fraction of water',
      from: 'IAPWS-IF97 region 4; US Standard Atmosphere 1976; Raoult’s law for ethylene glycol',
      needs: ['cap', 'glycol'],
      main: true,
    },
    margin: {
      unit: '°C',
      difference: true,
      formula: 'boils at − highest temperature seen',
      from: 'IAPWS-IF97 region 4; US Standard Atmosphere 1976; Raoult’s law for ethylene glycol',
      fallback: fallbacks.temperature,
      needs: ['cap', 'glycol', 'highest'],
      main: true,
      usualLimit: margin,
    },
    'drop across the radiator': {
      unit: '°C',
      difference: true,
      formula: 'temperature where the coolant enters − where it leaves',
      fallback: { absolute: 5 },
      needs: ['radiatorIn', 'radiatorOut'],
    },
    'coolant above the air': {
      unit: '°C',
      difference: true,
      formula: 'temperature where the coolant enters − air before the radiator',
      fallback: { absolute: 5 },
      needs: ['radiatorIn', 'air'],
    },
    'rule of thumb is off by': {
      unit: '°C',
      difference: true,
      formula: '212 °F + 3 °F for each psi of cap, less what water really does at sea level',
      from: 'IAPWS-IF97 region 4',
      needs: ['cap'],
    },
  },
  cautions: ['CAU-06', 'CAU-10'],
  shown: 'lines',
});
