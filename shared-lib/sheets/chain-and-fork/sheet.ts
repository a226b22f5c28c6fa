import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { elongation, heelLoss } from './limits.ts';

const size = { kind: 'number', unit: 'mm', possible: [0, 100_000] } as const;

export const chainAndForkSheet = describeSheet({
  id: 'MS-28',
  name: 'Chain, fork, tyre and guard reach',
  about:
    'Stretch of a chain over counted pitches under light tension, loss at a fork’s heel, tread left, and how far a hand reaches past a guard.',
  shelf: 'Steering, brakes, lifting',
  takenAt: ['FRM/MAST', 'DRV/WHEEL', 'PROT/GUARD'],
  leavesOpen: { passed: ['a crack that nobody looked for'], failed: ['what overloaded it'] },
  version: 1,
  inputs: {
    pitches: { kind: 'number', label: 'Pitches counted', unit: '', possible: [1, 1_000], usual: [6, 100] },
    pitch: { label: 'Pitch when new', ...size, possible: [1, 500] },
    measured: { label: 'Length over them', ...size },
    heelNew: { label: 'Fork heel when new', ...size, possible: [1, 1_000] },
    heel: { label: 'Fork heel now', ...size, repeats: 'lowest' },
    tread: { label: 'Tread left', ...size, possible: [0, 200], repeats: 'lowest' },
    opening: { label: 'Opening of the guard', ...size },
    reach: { label: 'Distance to the danger behind it', ...size },
  },
  conditions: {},
  results: {
    elongation: {
      suggests: 'wear',
      unit: '%',
      formula: '(length − pitches × pitch) ÷ (pitches × pitch)',
      fallback: fallbacks.elongation,
      needs: ['pitches', 'pitch', 'measured'],
      usualLimit: elongation,
    },
    'heel loss': {
      suggests: 'wear',
      unit: '%',
      formula: '(heel when new − heel now) ÷ heel when new',
      fallback: { absolute: 0.5 },
      needs: ['heelNew', 'heel'],
      usualLimit: heelLoss,
    },
    tread: { suggests: 'wear', unit: 'mm', formula: 'lowest reading', fallback: { absolute: 0.5 }, needs: ['tread'] },
    opening: { unit: 'mm', formula: 'as read', fallback: { absolute: 0.5 }, needs: ['opening'] },
    reach: { unit: 'mm', formula: 'as read', fallback: { absolute: 5 }, needs: ['reach'] },
  },
  cautions: ['CAU-11', 'CAU-21', 'CAU-23'],
  shown: 'lines',
});
