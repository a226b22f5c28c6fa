import { fallbacks } from '../fallbacks.ts';
import { describeSheet } from '../sheet-kind.ts';
import { leak } from './limits.ts';

export const cylinderLeakageSheet = describeSheet({
  id: 'MS-11',
  name: 'Cylinder leakage',
  about:
    'Air is let into a cylinder at top dead centre of compression; how much pressure is lost over the tester, and where the air is heard. Compare cylinders with one tester only.',
  shelf: 'Cylinders and head',
  takenAt: ['ENG/PST', 'ENG/RING', 'ENG/HG'],
  leavesOpen: {
    passed: ['a leak that opens only hot or running', 'a leak further down the liner, with the piston at the top'],
    failed: ['whether gasket, head or liner, where bubbles come in the coolant'],
  },
  version: 1,
  inputs: {
    supply: { kind: 'number', label: 'Pressure supplied', unit: 'bar', possible: [0.1, 20], usual: [1, 10] },
    cylinder: { kind: 'number', label: 'Pressure in the cylinder', unit: 'bar', possible: [0, 20], repeats: 'lowest' },
    heard: {
      kind: 'choice',
      label: 'Air is heard at',
      answers: ['nowhere', 'intake', 'exhaust', 'filler or dipstick', 'radiator neck', 'neighbouring cylinder'],
    },
  },
  conditions: {
    piston: {
      kind: 'choice',
      label: 'Piston',
      answers: ['top dead centre, compression', 'lower, valves shut', 'not held'],
    },
  },
  results: {
    leak: {
      suggests: 'sealleak',
      unit: '%',
      formula: '(1 − pressure in the cylinder ÷ pressure supplied)',
      from: 'differential pressure test, FAA AC 43.13-1B',
      fallback: fallbacks.leakage,
      needs: ['supply', 'cylinder'],
      main: true,
      usualLimit: leak,
    },
  },
  cautions: ['CAU-08', 'CAU-13'],
  shown: 'lines',
});
