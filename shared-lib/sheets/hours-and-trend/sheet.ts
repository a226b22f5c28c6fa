import { describeSheet } from '../sheet-kind.ts';

const hours = { kind: 'number', unit: 'h', possible: [-1_000_000, 1_000_000], usual: [0, 100_000] } as const;

export const hoursAndTrendSheet = describeSheet({
  id: 'MS-23',
  name: 'Hours and trend',
  about:
    'True hours from the meter and its offset, use in a day, and where a series of readings meets its limit. A changed part begins a new series.',
  shelf: 'Any part',
  takenAt: ['INST/HRM'],
  leavesOpen: { passed: ['anything that lies between two readings'], failed: ['why it changes'] },
  version: 1,
  inputs: {
    reading: { label: 'Meter reading', ...hours, possible: [0, 1_000_000] },
    offset: { label: 'Offset of this meter', ...hours },
    before: { label: 'True hours at the last visit', ...hours, possible: [0, 1_000_000] },
    days: { kind: 'number', label: 'Days since then', unit: '', possible: [0, 40_000] },
    series: {
      kind: 'rows',
      label: 'Series: true hours and value',
      row: 'reading',
      column: 'hours, then value',
      columns: 2,
      columnNames: ['true hours', 'value'],
      unit: '',
      possible: [-1e9, 1e9],
    },
    seriesUnit: { kind: 'text', label: 'Unit of the values' },
    most: { kind: 'number', label: 'Most allowed', unit: '', possible: [-1e9, 1e9] },
    least: { kind: 'number', label: 'Least allowed', unit: '', possible: [-1e9, 1e9] },
    changed: { kind: 'list', label: 'Part changed at (true hours)', unit: 'h', possible: [0, 1_000_000] },
  },
  conditions: { meter: { kind: 'choice', label: 'Meter', answers: ['runs', 'dead'] } },
  results: {
    hours: { unit: 'h', formula: 'meter reading + offset', needs: ['reading'], main: true },
    'hours a day': {
      unit: 'h',
      formula: '(true hours − true hours at the last visit) ÷ days',
      needs: ['reading', 'before', 'days'],
    },
    'change in 100 h': {
      unit: '',
      formula: 'slope of the least-squares line × 100 h',
      from: 'least squares',
      needs: ['series'],
    },
    'hours to the limit': {
      unit: 'h',
      formula: 'where the line meets the limit − hours of the latest reading, 95 % interval beside it',
      from: 'Fieller’s inverse prediction on the least-squares line',
      needs: ['series', ['most', 'least']],
    },
    earliest: {
      unit: 'h',
      formula: 'near end of the 95 % interval',
      from: 'Fieller',
      needs: ['series', ['most', 'least']],
    },
    latest: {
      unit: 'h',
      formula: 'far end of the 95 % interval',
      from: 'Fieller',
      needs: ['series', ['most', 'least']],
    },
    growth: { unit: '', formula: 'slope differs from nothing at 95 %', needs: ['series'], looksFor: true },
  },
  cautions: [],
  shown: 'trend',
});
