import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { leakBackRatio, openingSpread } from './limits.ts';

export const injectorsSheet = describeSheet({
  id: 'MS-18',
  name: 'Injectors',
  about:
    'On the hand pump: opening pressure, spray and a dry seat. On the engine: what each gives back over the same time, against the middle one.',
  shelf: 'Crank, oil and fuel',
  takenAt: ['FUEL/INJ'],
  leavesOpen: { passed: ['a nozzle that dribbles only hot'], failed: ['whether nozzle, seat or spring is at fault'] },
  version: 1,
  inputs: {
    opens: { kind: 'per-cylinder', label: 'Opening pressure', unit: 'bar', possible: [0, 2_500], usual: [50, 500] },
    set: {
      kind: 'number',
      label: 'Opening pressure it is set to',
      unit: 'bar',
      possible: [1, 2_500],
      usual: [50, 500],
    },
    leakBack: { kind: 'per-cylinder', label: 'Leak-back', unit: 'mL', possible: [0, 10_000], usual: [0, 500] },
    time: { kind: 'number', label: 'Over', unit: 's', possible: [1, 3_600] },
    drySeconds: { kind: 'per-cylinder', label: 'Seat dry for', unit: 's', possible: [0, 600] },
    spray: { kind: 'choice', label: 'Spray', answers: ['even', 'to one side', 'a stream'] },
  },
  conditions: {},
  results: {
    'leak-back ratio': {
      suggests: 'wear',
      unit: '',
      formula: 'each volume ÷ the middle one (median)',
      fallback: fallbacks.ratio,
      needs: ['leakBack'],
      usualLimit: leakBackRatio,
    },
    opening: {
      suggests: 'lowout',
      usualLimitRule: 'within 8 bar of what it is set to; common practice',
      unit: 'bar',
      formula: 'as read',
      fallback: fallbacks.pressure,
      needs: ['opens'],
    },
    'opening spread': {
      unit: 'bar',
      formula: 'highest − lowest opening pressure',
      fallback: fallbacks.spread,
      needs: ['opens'],
      usualLimit: openingSpread,
    },
    'seat not dry': {
      suggests: 'sealleak',
      unit: '',
      formula: 'dry for less than 10 s below opening',
      needs: ['drySeconds'],
      looksFor: true,
    },
    'bad spray': { unit: '', formula: 'as seen', needs: ['spray'], looksFor: true },
  },
  cautions: ['CAU-02', 'CAU-07'],
  shown: 'bars',
});
