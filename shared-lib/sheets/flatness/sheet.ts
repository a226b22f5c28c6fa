import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { local, overall } from './limits.ts';

export const flatnessSheet = describeSheet({
  id: 'MS-13',
  name: 'Flatness',
  about:
    'Deck or head, cleaned, unclamped, evenly supported and cold: the largest feeler under a straightedge along the edges, ends and diagonals, or heights over a grid.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG/BLK/DECK', 'ENG/HD'],
  leavesOpen: {
    passed: ['a surface that moves when it is bolted down or hot', 'a crack'],
    failed: ['whether heat or a wrong tightening bent it'],
  },
  version: 1,
  inputs: {
    points: {
      kind: 'rows',
      label: 'Points (x, y, height)',
      row: 'point',
      column: 'x, y, height',
      columns: 3,
      columnNames: ['x', 'y', 'height'],
      unit: 'mm',
      possible: [-20_000, 20_000],
    },
    x: { kind: 'list', label: 'Places along', unit: 'mm', possible: [-20_000, 20_000], fewest: 2 },
    y: { kind: 'list', label: 'Places across', unit: 'mm', possible: [-20_000, 20_000], fewest: 2 },
    heights: {
      kind: 'rows',
      label: 'Heights',
      row: 'place across',
      column: 'place along',
      unit: 'mm',
      possible: [-100, 100],
      usual: [-1, 1],
    },
    straightedge: {
      kind: 'list',
      label: 'Largest feeler under each line',
      unit: 'mm',
      possible: [0, 10],
      usual: [0, 0.6],
    },
    local: { kind: 'list', label: 'Largest feeler within 150 mm', unit: 'mm', possible: [0, 10], usual: [0, 0.3] },
    thickness: { kind: 'number', label: 'Thickness of the head', unit: 'mm', possible: [1, 1_000], repeats: 'lowest' },
  },
  conditions: { clamped: { kind: 'choice', label: 'Part', answers: ['free', 'clamped'] } },
  results: {
    flatness: {
      suggests: 'warp',
      unit: 'mm',
      formula: 'least distance of two parallel planes that hold all points between them',
      from: 'ISO 1101 flatness zone; ISO 12781-1 minimum zone',
      fallback: fallbacks.flatness,
      needs: [
        ['points', 'heights', 'straightedge'],
        ['points', 'x', 'straightedge'],
        ['points', 'y', 'straightedge'],
      ],
      main: true,
      usualLimit: overall,
    },
    overall: {
      suggests: 'warp',
      unit: 'mm',
      formula: 'largest feeler of all lines',
      fallback: fallbacks.flatness,
      needs: ['straightedge'],
      usualLimit: overall,
    },
    local: {
      suggests: 'warp',
      unit: 'mm',
      formula: 'largest feeler within 150 mm',
      fallback: { absolute: 0.01 },
      needs: ['local'],
      usualLimit: local,
    },
    'steepest in 100 mm': {
      unit: 'mm',
      formula: 'largest difference of neighbouring heights over the minimum-zone plane, for 100 mm',
      needs: [['points', 'heights']],
    },
    twist: {
      unit: 'mm',
      formula: 'half the sum of one pair of opposite corners − half the sum of the other',
      needs: ['heights'],
    },
    'thickness after a skim': {
      unit: 'mm',
      formula: 'thickness − (flatness + 0.05)',
      fallback: fallbacks.flatness,
      needs: ['thickness', ['points', 'heights', 'straightedge']],
    },
  },
  cautions: ['CAU-25'],
  shown: 'surface',
  ownUncertainty: true,
});
