import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { vacuum } from './limits.ts';

const pressure = { unit: 'kPa', possible: [0, 500], usual: [10, 160] } as const;

export const pressureCapSheet = describeSheet({
  id: 'MS-06',
  name: 'Pressure cap',
  about: 'Where the cap opens, whether it holds, and whether its vacuum valve lets air back in.',
  shelf: 'Cooling',
  takenAt: ['COOL/CAP'],
  leavesOpen: {
    passed: ['a leak elsewhere in the system', 'a wrong cap for this radiator'],
    failed: ['whether the pressure ever rose so high in use'],
  },
  version: 1,
  inputs: {
    rating: { kind: 'number', label: 'Rating stamped on the cap', ...pressure },
    wanted: { kind: 'number', label: 'Rating the radiator asks for', ...pressure },
    opens: { kind: 'list', label: 'Opens at', unit: 'kPa', possible: [0, 500], usual: [5, 160] },
    holds: { kind: 'number', label: 'Holds after 60 s', unit: 'kPa', possible: [0, 500], repeats: 'lowest' },
    vacuum: {
      kind: 'number',
      label: 'Vacuum valve opens at',
      unit: 'kPa',
      possible: [0, 101],
      usual: [0, 20],
      repeats: 'highest',
    },
    vacuumValve: { kind: 'choice', label: 'Vacuum valve', answers: ['free', 'stuck shut', 'stuck open'] },
    seal: { kind: 'text', label: 'Seal and neck seat' },
  },
  conditions: {},
  results: {
    opens: {
      suggests: 'lowout',
      usualLimitRule: 'within a tenth of the rating; common practice',
      unit: 'kPa',
      formula: 'the try furthest from the rating',
      fallback: fallbacks.pressure,
      needs: ['opens', 'rating'],
      main: true,
    },
    holds: {
      suggests: 'sealleak',
      usualLimitRule: '0.8 of the rating at least; common practice',
      unit: 'kPa',
      formula: 'lowest pressure left after 60 s',
      fallback: fallbacks.pressureHeld,
      needs: ['holds', 'rating'],
    },
    vacuum: {
      unit: 'kPa',
      formula: 'suction at which the vacuum valve opens',
      fallback: { absolute: 0.5 },
      needs: ['vacuum'],
      usualLimit: vacuum,
    },
    'vacuum valve stuck': { suggests: 'inop', unit: '', formula: 'as seen', needs: ['vacuumValve'], looksFor: true },
    'wrong cap': {
      suggests: 'misfit',
      unit: '',
      formula: 'rating stamped on the cap against the one asked for',
      needs: ['rating', 'wanted'],
      looksFor: true,
    },
  },
  cautions: ['CAU-06'],
  shown: 'lines',
});
