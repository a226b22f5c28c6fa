import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { endFloat, outOfRound, taper } from './limits.ts';

export const journalsSheet = describeSheet({
  id: 'MS-17',
  name: 'Journals and bearings',
  about:
    'A journal at both ends, each in two directions, and the shells it runs in, torqued. Look for cracks in the fillets by magnet as well.',
  shelf: 'Crank, oil and fuel',
  takenAt: ['ENG/CRK', 'ENG/ROD'],
  leavesOpen: {
    passed: ['a crack in a fillet, which sizes do not show'],
    failed: ['what wore it: dirt, want of oil or a bent crank'],
  },
  version: 1,
  inputs: {
    diameters: {
      kind: 'rows',
      label: 'Journal',
      row: 'end',
      column: 'direction',
      unit: 'mm',
      possible: [5, 500],
      usual: [15, 250],
    },
    whenNew: { kind: 'number', label: 'Journal when new', unit: 'mm', possible: [5, 500] },
    shell: { kind: 'number', label: 'Shells, inside, torqued', unit: 'mm', possible: [5, 500], repeats: 'highest' },
    strip: { kind: 'number', label: 'Clearance by crushed strip', unit: 'mm', possible: [0, 2], usual: [0.01, 0.4] },
    shells: { kind: 'choice', label: 'Shells', answers: ['new', 'used'] },
    endFloat: { kind: 'number', label: 'End float', unit: 'mm', possible: [0, 10], usual: [0.02, 1.5] },
    runOut: { kind: 'number', label: 'Run-out on blocks', unit: 'mm', possible: [0, 10], usual: [0, 0.5] },
    steps: { kind: 'list', label: 'Undersizes to be had', unit: 'mm', possible: [0.01, 5], usual: [0.1, 2] },
  },
  conditions: {},
  results: {
    wear: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'journal when new − smallest diameter',
      fallback: fallbacks.size,
      needs: ['diameters', 'whenNew'],
    },
    'out of round': {
      suggests: 'wear',
      unit: 'mm',
      formula: 'largest − smallest diameter at one end, the worst end',
      fallback: fallbacks.size,
      needs: ['diameters'],
      main: true,
      usualLimit: outOfRound,
    },
    taper: {
      suggests: 'wear',
      unit: 'mm',
      formula: 'difference between the ends in one direction, the worst direction',
      fallback: fallbacks.size,
      needs: ['diameters'],
      main: true,
      usualLimit: taper,
    },
    'clearance on the largest': {
      usualLimitRule: 'new shells 0.0008 to 0.0010 of the journal; common practice',
      unit: 'mm',
      formula: 'shells − largest diameter',
      fallback: fallbacks.clearance,
      needs: ['diameters', 'shell'],
    },
    'clearance on the smallest': {
      usualLimitRule: 'new shells 0.0008 to 0.0010 of the journal; common practice',
      unit: 'mm',
      formula: 'shells − smallest diameter',
      fallback: fallbacks.clearance,
      needs: ['diameters', 'shell'],
    },
    'clearance by strip': { unit: 'mm', formula: 'as read', fallback: fallbacks.clearance, needs: ['strip'] },
    'end float': {
      suggests: 'play',
      unit: 'mm',
      formula: 'as read',
      fallback: fallbacks.clearance,
      needs: ['endFloat'],
      usualLimit: endFloat,
    },
    'run-out': { suggests: 'deform', unit: 'mm', formula: 'as read', fallback: fallbacks.size, needs: ['runOut'] },
    'next undersize': {
      unit: 'mm',
      formula: 'smallest step with new diameter − step ≤ smallest diameter − 0.02',
      needs: ['diameters', 'whenNew', 'steps'],
    },
  },
  cautions: [],
  shown: 'lines',
});
