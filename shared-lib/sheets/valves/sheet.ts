import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';

export const valvesSheet = describeSheet({
  id: 'MS-16',
  name: 'Valves, seats and guides',
  about: 'How deep a valve sits, how wide and true its seat is, and the play of its stem, by sizes or by rocking it.',
  version: 1,
  inputs: {
    valve: { kind: 'choice', label: 'Valve', answers: ['intake', 'exhaust'] },
    recession: {
      kind: 'number',
      label: 'Depth of the head below the fire face',
      unit: 'mm',
      possible: [-10, 30],
      usual: [-1, 5],
    },
    newRecession: { kind: 'number', label: 'Depth when new', unit: 'mm', possible: [-10, 30] },
    guide: { kind: 'number', label: 'Guide, inside', unit: 'mm', possible: [2, 50] },
    stem: { kind: 'number', label: 'Stem, outside', unit: 'mm', possible: [2, 50] },
    rock: { kind: 'number', label: 'Movement of the dial when rocked', unit: 'mm', possible: [0, 20], usual: [0, 2] },
    beyond: { kind: 'number', label: 'Dial beyond the end of the guide', unit: 'mm', possible: [0, 500] },
    guideLength: { kind: 'number', label: 'Length of the guide', unit: 'mm', possible: [5, 500] },
    seatWidth: { kind: 'number', label: 'Seat width', unit: 'mm', possible: [0, 20], usual: [0.5, 6] },
    runOut: { kind: 'number', label: 'Run-out of the seat', unit: 'mm', possible: [0, 5], usual: [0, 0.5] },
    margin: {
      kind: 'number',
      label: 'Thickness of the head at its edge',
      unit: 'mm',
      possible: [0, 20],
      usual: [0.3, 5],
    },
  },
  conditions: {},
  results: {
    'stem clearance': {
      suggests: 'wear',
      usualLimitRule: 'intake 0.10 mm, exhaust 0.15 mm at most; common practice',
      unit: 'mm',
      formula: 'guide − stem; or dial movement ÷ (1 + 2 × distance beyond ÷ guide length)',
      from: 'geometry of a stem rocking in its guide',
      fallback: fallbacks.clearance,
      needs: [
        ['guide', 'rock'],
        ['stem', 'beyond'],
        ['stem', 'guideLength'],
      ],
    },
    recession: {
      suggests: 'sunk',
      unit: 'mm',
      formula: 'as read',
      fallback: fallbacks.recession,
      needs: ['recession'],
      main: true,
    },
    'sunk since new': {
      unit: 'mm',
      formula: 'depth − depth when new',
      fallback: fallbacks.recession,
      needs: ['recession', 'newRecession'],
    },
    'seat width': { unit: 'mm', formula: 'as read', fallback: { absolute: 0.1 }, needs: ['seatWidth'] },
    'run-out': { suggests: 'deform', unit: 'mm', formula: 'as read', fallback: fallbacks.size, needs: ['runOut'] },
    'edge left': { unit: 'mm', formula: 'as read', fallback: { absolute: 0.1 }, needs: ['margin'] },
  },
  cautions: ['CAU-30'],
  shown: 'lines',
});
