import { describeSheet } from '../sheet-kind.ts';
import { cellSpread, charge } from './limits.ts';

export const batteryAtRestSheet = describeSheet({
  id: 'MS-01',
  name: 'Battery at rest',
  about:
    'How full each battery is, by its voltage after rest, and whether its cells agree. Batteries joined side by side or in a row are parted and read one by one: a good one hides a weak one.',
  shelf: 'Battery, starting, charging',
  takenAt: ['ELEC/BAT'],
  leavesOpen: {
    passed: ['a battery that breaks down only under load'],
    failed: ['whether the battery is worn out or was not charged'],
  },
  version: 1,
  inputs: {
    rest: {
      kind: 'list',
      label: 'Voltage at rest',
      unit: 'V',
      possible: [0, 16],
      usual: [10, 13.3],
      because: 'a battery of 6 or 12 volts never rests above 16; read each battery by itself',
    },
    gravity: {
      kind: 'list',
      label: 'Specific gravity of each cell',
      unit: '',
      possible: [1, 1.4],
      usual: [1.1, 1.32],
      because: 'battery acid lies between water and 1.4',
    },
  },
  conditions: {
    batteryVolts: { kind: 'number', label: 'Each battery', unit: 'V', possible: [6, 12] },
    hoursRested: { kind: 'number', label: 'Hours rested', unit: 'h', possible: [0, 10_000] },
    surfaceCharge: {
      kind: 'choice',
      label: 'Surface charge taken off with the lights',
      answers: ['yes', 'no'],
    },
    temperature: { kind: 'number', label: 'Battery temperature', unit: '°C', possible: [-60, 80], usual: [-30, 55] },
    state: { kind: 'choice', label: 'Battery', answers: ['sound', 'frozen', 'cracked', 'gassing'] },
  },
  results: {
    charge: {
      suggests: 'lowout',
      unit: '%',
      formula: 'charge by the voltage at rest, straight lines between the rows of the table',
      from: 'state-of-charge table for flooded batteries at 80 °F (27 °C), in wide public use',
      needs: ['rest'],
      main: true,
      usualLimit: charge,
    },
    'charge by gravity': {
      unit: '%',
      formula: 'charge by the lowest specific gravity, brought to 80 °F (27 °C)',
      from: 'US Army TM 5-4210-230-14&P, table 2; 0.004 for each 10 °F, TM 5-3820-256-24-4',
      fallback: { absolute: 3 },
      needs: ['gravity'],
      usualLimit: charge,
    },
    'gravity at 80 °F': {
      unit: '',
      formula: 'gravity + 0.004 for each 10 °F over 80',
      from: 'US Army TM 5-3820-256-24-4',
      needs: ['gravity', 'temperature'],
    },
    'spread between cells': {
      suggests: 'lowout',
      unit: '',
      formula: 'highest less lowest specific gravity',
      fallback: { absolute: 0.003 },
      needs: ['gravity'],
      usualLimit: cellSpread,
    },
  },
  cautions: ['CAU-05', 'CAU-38'],
  shown: 'lines',
});
