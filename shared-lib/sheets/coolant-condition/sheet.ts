import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { acidity, glycol } from './limits.ts';

export const coolantConditionSheet = describeSheet({
  id: 'MS-26',
  name: 'Coolant',
  about: 'Strength by refractometer (for the right kind of glycol), acidity by strip, look and smell.',
  shelf: 'Cooling',
  takenAt: ['COOL/COOLANT'],
  leavesOpen: { passed: ['what is deposited in the passages already'], failed: ['how long it has been so'] },
  version: 1,
  inputs: {
    glycol: { kind: 'number', label: 'Glycol by volume', unit: '%', possible: [0, 100], usual: [0, 70] },
    freezes: { kind: 'number', label: 'Freezes at, read', unit: '°C', possible: [-80, 10], usual: [-65, 1] },
    pH: {
      kind: 'number',
      label: 'pH',
      unit: '',
      possible: [0, 14],
      usual: [5, 12],
      because: 'the scale runs from 0 to 14',
    },
    inhibitor: { kind: 'number', label: 'Inhibitor strip', unit: '', possible: [0, 1_000] },
    oilFilm: { kind: 'choice', label: 'Oil film', answers: ['yes', 'no'] },
    look: { kind: 'text', label: 'Look' },
  },
  conditions: { glycolKind: { kind: 'choice', label: 'Glycol', answers: ['ethylene', 'propylene', 'not known'] } },
  results: {
    glycol: {
      suggests: 'wrongfluid',
      unit: '%',
      formula: 'as read',
      fallback: fallbacks.glycol,
      needs: ['glycol'],
      main: true,
      usualLimit: glycol,
    },
    pH: {
      suggests: 'wrongfluid',
      unit: '',
      formula: 'as read',
      fallback: fallbacks.acidity,
      needs: ['pH'],
      usualLimit: acidity,
    },
    'freezes at': {
      unit: '°C',
      formula: 'freezing point of that mixture, straight lines between the rows of the table',
      from: 'US Army TM 5-3895-382-24, ethylene glycol by volume',
      needs: ['glycol'],
    },
    'oil film': { suggests: 'mixing', unit: '', formula: 'as seen', needs: ['oilFilm'], looksFor: true },
  },
  cautions: ['CAU-28'],
  shown: 'lines',
});
