import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';

export const brakesSheet = describeSheet({
  id: 'MS-22',
  name: 'Brakes',
  about:
    'Stopping from a known speed on level ground with the pedals latched, and whether the parking brake holds on the steepest slope the machine works on.',
  shelf: 'Steering, brakes, lifting',
  takenAt: ['BRK'],
  leavesOpen: {
    passed: ['fading when hot, or on a wet or steep surface'],
    failed: ['whether lining, cylinder, line or adjustment is at fault'],
  },
  version: 1,
  inputs: {
    speed: { kind: 'number', label: 'Speed', unit: 'km/h', possible: [0.5, 150], usual: [5, 50] },
    distance: {
      kind: 'number',
      label: 'Distance to rest',
      unit: 'm',
      possible: [0.1, 1_000],
      usual: [0.5, 60],
      repeats: 'highest',
    },
    reaction: { kind: 'number', label: 'Reaction time inside that distance', unit: 's', possible: [0, 5] },
    mass: { kind: 'number', label: 'Mass', unit: 'kg', possible: [50, 500_000], usual: [300, 60_000] },
    slope: { kind: 'number', label: 'Slope', unit: '%', possible: [0, 200], usual: [0, 60] },
    creep: { kind: 'number', label: 'Parking brake creeps', unit: 'mm', possible: [0, 100_000] },
    time: { kind: 'number', label: 'Over', unit: 'min', possible: [0.1, 1_440] },
    pedalReserve: { kind: 'number', label: 'Pedal reserve', unit: 'mm', possible: [0, 500] },
    pull: { kind: 'choice', label: 'Pulls', answers: ['straight', 'left', 'right'] },
  },
  conditions: {
    pedals: { kind: 'choice', label: 'Pedals', answers: ['latched', 'not latched', 'one pedal'] },
    surface: { kind: 'choice', label: 'Surface', answers: ['dry and firm', 'wet', 'loose'] },
  },
  results: {
    deceleration: {
      suggests: 'lowout',
      usualLimitRule: '2.5 m/s² at least, beyond under 1.5, up to 25 km/h; common practice',
      unit: 'm/s²',
      formula: 'speed² ÷ (2 × distance), the way of the reaction time taken off',
      fallback: fallbacks.deceleration,
      needs: ['speed', 'distance'],
    },
    'of g': {
      unit: '%',
      formula: 'deceleration ÷ standard gravity',
      from: 'standard gravity 9.80665 m/s²',
      needs: ['speed', 'distance'],
    },
    'holding force needed': {
      unit: 'kN',
      formula: 'mass × standard gravity × sin(atan(slope))',
      from: 'standard gravity 9.80665 m/s²',
      needs: ['mass', 'slope'],
    },
    creep: { suggests: 'lowout', unit: 'mm', formula: 'more than 5 mm of creep', needs: ['creep'], looksFor: true },
    'pedal reserve': { unit: 'mm', formula: 'as read', fallback: { absolute: 2 }, needs: ['pedalReserve'] },
    'pulls to one side': { unit: '', formula: 'as seen', needs: ['pull'], looksFor: true },
  },
  cautions: ['CAU-15', 'CAU-37'],
  shown: 'lines',
});
