import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { play } from './limits.ts';

export const steeringPlaySheet = describeSheet({
  id: 'MS-21',
  name: 'Steering free play',
  about:
    'How far the rim of the steering wheel turns between the points where the road wheel just starts each way; engine running if the steering is powered.',
  shelf: 'Steering, brakes, lifting',
  takenAt: ['STEER'],
  leavesOpen: { passed: ['a joint that is loose only in one position'], failed: ['which joint has the play'] },
  version: 1,
  inputs: {
    radius: {
      kind: 'number',
      label: 'Radius to where it was measured',
      unit: 'mm',
      possible: [20, 1_000],
      usual: [120, 320],
    },
    arc: {
      kind: 'number',
      label: 'Way along the rim',
      unit: 'mm',
      possible: [0, 6_000],
      usual: [0, 400],
      repeats: 'highest',
    },
    chord: {
      kind: 'number',
      label: 'Straight distance between the points',
      unit: 'mm',
      possible: [0, 2_000],
      usual: [0, 400],
      repeats: 'highest',
    },
    creep: { kind: 'number', label: 'Creep at lock each minute', unit: '°', possible: [0, 3_600], usual: [0, 360] },
  },
  conditions: {
    engine: { kind: 'choice', label: 'Engine', answers: ['running', 'off'] },
    steering: { kind: 'choice', label: 'Steering', answers: ['mechanical', 'powered', 'hydrostatic'] },
  },
  results: {
    play: {
      suggests: 'play',
      unit: '°',
      formula: 'way along the rim ÷ radius × 180 ÷ π, or 2 × asin(straight distance ÷ (2 × radius))',
      fallback: fallbacks.angle,
      needs: ['radius', ['arc', 'chord']],
      main: true,
      usualLimit: play,
    },
    'creep at lock': { unit: '°', formula: 'as read, each minute', fallback: fallbacks.angle, needs: ['creep'] },
  },
  cautions: ['CAU-16'],
  shown: 'lines',
});
