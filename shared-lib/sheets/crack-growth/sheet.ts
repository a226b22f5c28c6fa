import { describeSheet } from '../sheet-kind.ts';

const length = { kind: 'number', unit: 'mm', possible: [0, 20_000], usual: [0.5, 2_000] } as const;
const hours = { kind: 'number', unit: 'h', possible: [0, 1_000_000], usual: [0, 100_000] } as const;

export const crackGrowthSheet = describeSheet({
  id: 'MS-24',
  name: 'Crack growth',
  about: 'The same crack, the same ends, the same method and light, at two visits. Two lengths never tell a safe life.',
  shelf: 'Any part',
  takenAt: [],
  leavesOpen: {
    passed: ['growth smaller than the reading can show', 'growth out of sight, below the surface or under paint'],
    failed: ['what drives it'],
  },
  version: 1,
  inputs: {
    before: { label: 'Length before', ...length },
    now: { label: 'Length now', ...length },
    hoursBefore: { label: 'True hours before', ...hours },
    hoursNow: { label: 'True hours now', ...hours },
    how: { kind: 'choice', label: 'Measured with', answers: ['scale on the part', 'scaled photo'] },
  },
  conditions: { part: { kind: 'choice', label: 'Part', answers: ['the same', 'changed between'] } },
  results: {
    growth: {
      suggests: 'crack',
      unit: 'mm',
      formula: 'length now − length before, shown where it is at least twice what a length can be off by',
      needs: ['before', 'now'],
      main: true,
      looksFor: true,
    },
    'per 100 h': {
      unit: 'mm',
      formula: 'growth ÷ hours between × 100',
      needs: ['before', 'now', 'hoursBefore', 'hoursNow'],
    },
  },
  cautions: [],
  shown: 'trend',
});
