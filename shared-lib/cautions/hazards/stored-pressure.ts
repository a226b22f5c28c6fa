import { type Caution, commonPractice } from '../caution.ts';

export const storedPressure = [
  {
    id: 'CAU-02',
    word: 'WARNING',
    hazard: 'Fluid injected through the skin',
    text: 'Fine jets pierce skin unseen. Use card and eye protection, never a hand. Any puncture: hospital at once, say fluid injection, however small.',
    audience: 'both',
    sources: ['HSE bulletin FOD 4-2014'],
    calledBy: [
      { by: 'finding', at: { classes: ['hydraulic-line', 'fuel-high-pressure'] } },
      // A leaking exhaust is no fluid jet: only where oil or fuel stands under pressure.
      {
        by: 'finding',
        at: { classes: ['hydraulic', 'fuel-under-pressure', 'brakes', 'steering'] },
        defects: ['spray', 'sealleak', 'hosecover'],
      },
      { by: 'finding', defects: ['spray'] },
      { by: 'sheet', sheets: ['MS-18', 'MS-25'] },
      { by: 'step', steps: ['grease-tensioner'] },
    ],
  },
  {
    id: 'CAU-03',
    word: 'WARNING',
    hazard: 'Hydraulic pressure still there',
    text: 'Lower all loads, stop engine, work controls to bleed pressure, crack the fitting slowly behind a cloth; expect pressure even when off.',
    audience: 'bench',
    sources: ['ISO 4413', commonPractice],
    calledBy: [{ by: 'step', steps: ['open-hydraulic'] }],
  },
  {
    id: 'CAU-04',
    word: 'DANGER',
    hazard: 'Accumulator stays charged',
    text: "Gas-charged accumulators stay pressurised. Discharge by the maker's method before loosening anything; charge only with dry nitrogen, never air or oxygen.",
    audience: 'both',
    sources: ['ISO 4413', commonPractice],
    calledBy: [
      { by: 'machine', has: { classes: ['accumulator'] } },
      { by: 'finding', at: { classes: ['accumulator'] } },
      { by: 'step', steps: ['open-hydraulic', 'wheel-off'], machineHas: { classes: ['accumulator'] } },
      { by: 'step', steps: ['open-hydraulic'], at: { classes: ['accumulator'] } },
    ],
  },
  {
    id: 'CAU-29',
    word: 'WARNING',
    hazard: 'Too much pressure in a test',
    text: "Never exceed the cap or maker's pressure. Fill with water, bleed air, stand off the core plugs.",
    audience: 'bench',
    sources: [commonPractice],
    calledBy: [
      { by: 'sheet', sheets: ['MS-07'] },
      { by: 'step', steps: ['pressure-test'] },
    ],
  },
  {
    id: 'CAU-30',
    word: 'WARNING',
    hazard: 'Compressed spring or grease tensioner',
    text: "Compressed springs and grease tensioners store lethal energy. Use the maker's tool and order; never stand in line with the fitting.",
    audience: 'bench',
    sources: ['HSE bulletin FOD 4-2014', commonPractice],
    calledBy: [
      { by: 'step', steps: ['spring', 'grease-tensioner'] },
      { by: 'finding', at: { classes: ['valve-spring'] } },
      { by: 'finding', at: { parts: ['DRV/TRK/TENSIONER', 'BRK/PARK/ACTR'] } },
    ],
  },
] as const satisfies readonly Caution[];
