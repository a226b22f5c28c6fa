import { systemVolts } from '../conditions.ts';
import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { cableLoss, outputShare, ripple } from './limits.ts';

export const chargingSheet = describeSheet({
  id: 'MS-05',
  name: 'Charging',
  about:
    'Voltage at the battery and current at mid speed with a charged battery, then the most the alternator gives under a load test.',
  shelf: 'Battery, starting, charging',
  takenAt: ['ELEC/ALT', 'ELEC/REG'],
  leavesOpen: {
    passed: ['a fault that comes only hot, or when the belt slips'],
    failed: ['whether alternator, regulator, belt or cable is to blame'],
  },
  version: 1,
  inputs: {
    volts: {
      kind: 'number',
      label: 'Voltage at the battery',
      unit: 'V',
      possible: [0, 80],
      usual: [10, 32],
      repeats: 'highest',
    },
    output: { kind: 'number', label: 'Most current under load', unit: 'A', possible: [0, 1_000], usual: [0, 300] },
    rated: { kind: 'number', label: 'Rated current', unit: 'A', possible: [1, 1_000], usual: [10, 300] },
    loads: { kind: 'number', label: 'Current the loads take', unit: 'A', possible: [0, 1_000] },
    ripple: { kind: 'number', label: 'Ripple, alternating volts', unit: 'V', possible: [0, 40], usual: [0, 3] },
    terminal: {
      kind: 'number',
      label: 'Voltage at the alternator stud',
      unit: 'V',
      possible: [0, 80],
      usual: [10, 32],
    },
    atBattery: {
      kind: 'number',
      label: 'Voltage at the battery at that current',
      unit: 'V',
      possible: [0, 80],
      usual: [10, 32],
    },
    groundDrop: {
      kind: 'number',
      label: 'Drop from case to battery ground',
      unit: 'V',
      possible: [-1, 40],
      usual: [0, 2],
    },
    engineSpeed: { kind: 'number', label: 'Engine speed', unit: 'rpm', possible: [0, 20_000], usual: [300, 4_000] },
    crankPulley: { kind: 'number', label: 'Crank pulley', unit: 'mm', possible: [10, 2_000] },
    alternatorPulley: { kind: 'number', label: 'Alternator pulley', unit: 'mm', possible: [10, 2_000] },
  },
  conditions: {
    system: systemVolts,
    temperature: { kind: 'number', label: 'Battery temperature', unit: '°C', possible: [-60, 80], usual: [-30, 60] },
    battery: { kind: 'choice', label: 'Battery', answers: ['charged', 'discharged'] },
    belt: { kind: 'choice', label: 'Belt slips', answers: ['yes', 'no'] },
    machine: { kind: 'choice', label: 'Generator', answers: ['alternator', 'dynamo'] },
  },
  results: {
    volts: {
      suggests: 'lowout',
      usualLimitRule: '13.8 to 14.7 V in a 12 V system, in proportion for others; common practice',
      unit: 'V',
      formula: 'as read',
      fallback: fallbacks.voltage,
      needs: ['volts'],
      main: true,
    },
    'at that temperature': {
      unit: 'V',
      formula: 'middle of the band a regulator keeps at the battery’s temperature',
      from: 'US Army TM 9-6115-464-12, table 4-5',
      needs: ['temperature'],
    },
    output: {
      suggests: 'lowout',
      unit: '%',
      formula: 'most current ÷ rated current',
      fallback: { share: 0.02 },
      needs: ['output', 'rated'],
      usualLimit: outputShare,
    },
    'left for the battery': { unit: 'A', formula: 'most current − loads', needs: ['output', 'loads'] },
    ripple: { unit: 'V', formula: 'as read', fallback: fallbacks.voltage, needs: ['ripple'], usualLimit: ripple },
    'charging cable drop': {
      suggests: 'galv',
      unit: 'V',
      formula: 'alternator stud − battery, at high current',
      fallback: fallbacks.voltageDrop,
      needs: ['terminal', 'atBattery'],
      usualLimit: cableLoss,
    },
    'ground drop': {
      suggests: 'galv',
      unit: 'V',
      formula: 'as read',
      fallback: fallbacks.voltageDrop,
      needs: ['groundDrop'],
      usualLimit: cableLoss,
    },
    'alternator speed': {
      unit: 'rpm',
      formula: 'engine speed × crank pulley ÷ alternator pulley',
      needs: ['engineSpeed', 'crankPulley', 'alternatorPulley'],
    },
  },
  cautions: ['CAU-05', 'CAU-09', 'CAU-10', 'CAU-37', 'CAU-38'],
  shown: 'lines',
});
