import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';

export const batteryUnderLoadSheet = describeSheet({
  id: 'MS-02',
  name: 'Battery under load',
  about:
    'Whether a charged battery holds its voltage for 15 seconds at half its cold-cranking rating. Parallel batteries are parted and tested one by one.',
  shelf: 'Battery, starting, charging',
  takenAt: ['ELEC/BAT'],
  leavesOpen: {
    passed: ['a fault of the cables or of the charging'],
    failed: ['whether the battery is worn out, if it was not charged before'],
  },
  version: 1,
  inputs: {
    rating: {
      kind: 'number',
      label: 'Cold-cranking rating',
      unit: 'A',
      possible: [20, 3_000],
      usual: [100, 1_500],
      because: 'no starting battery has such a rating',
    },
    load: { kind: 'number', label: 'Load', unit: 'A', possible: [1, 3_000], usual: [50, 800] },
    loaded: {
      kind: 'number',
      label: 'Voltage after 15 s',
      unit: 'V',
      possible: [0, 14],
      usual: [5, 12.7],
      repeats: 'lowest',
      because: 'under load it cannot stand above a battery at rest',
    },
    rest: { kind: 'number', label: 'Voltage at rest', unit: 'V', possible: [0, 16], usual: [11.5, 13.3] },
  },
  conditions: {
    batteryVolts: { kind: 'number', label: 'Each battery', unit: 'V', possible: [6, 12] },
    temperature: { kind: 'number', label: 'Battery temperature', unit: '°C', possible: [-60, 80], usual: [-30, 55] },
    charge: { kind: 'number', label: 'Charge before the test', unit: '%', possible: [0, 100] },
    state: { kind: 'choice', label: 'Battery', answers: ['sound', 'frozen', 'cracked', 'gassing'] },
  },
  results: {
    'voltage under load': {
      suggests: 'lowout',
      usualLimitRule: '9.6 V at 21 °C and above, less in the cold by the table; common practice',
      unit: 'V',
      formula: 'lowest voltage read after 15 s',
      from: 'US Army TM 5-4210-230-14&P, table 5, straight lines between its rows',
      fallback: fallbacks.voltage,
      needs: ['loaded', 'temperature'],
      main: true,
    },
    'internal resistance': {
      unit: 'mΩ',
      formula: '(voltage at rest − voltage under load) ÷ load',
      needs: ['rest', 'loaded', 'load'],
    },
    'load against the rating': { unit: '%', formula: 'load ÷ half the rating', needs: ['load', 'rating'] },
  },
  cautions: ['CAU-05', 'CAU-38'],
  shown: 'lines',
});
