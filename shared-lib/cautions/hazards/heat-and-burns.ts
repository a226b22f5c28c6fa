import { type Caution, commonPractice } from '../caution.ts';

export const heatAndBurns = [
  {
    id: 'CAU-06',
    word: 'WARNING',
    hazard: 'Scalded at the radiator cap',
    text: 'Hot systems spray scalding coolant. Let cool until hand-warm, cover, release to the first stop, wait, then remove.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['pressure-cap', 'radiator'] } },
      { by: 'sheet', sheets: ['MS-06', 'MS-07', 'MS-08', 'MS-09'] },
    ],
  },
  {
    id: 'CAU-27',
    word: 'CAUTION',
    hazard: 'Hot surfaces',
    text: 'Let exhaust, turbo and oil cool, or use insulated gloves.',
    audience: 'bench',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['hot-exhaust', 'turbocharger'] } },
      { by: 'step', steps: ['run', 'run-indoors'] },
    ],
  },
  {
    id: 'CAU-34',
    word: 'WARNING',
    hazard: 'Acid from charred seals',
    text: 'Charred seals can leave acid that burns skin deeply. Do not touch bare-handed; neoprene gloves, bag, wash, seek medical help.',
    audience: 'bench',
    sources: ['the safety sheet of the product', commonPractice],
    calledBy: [{ by: 'finding', facts: ['charred-seal'] }],
  },
  {
    id: 'CAU-38',
    word: 'CAUTION',
    hazard: 'Short circuit',
    text: 'Remove rings and watch. Isolate battery. A shorted main cable melts metal and starts fires; fuse test leads.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['main-cable'] }, defects: ['chafe'] },
      { by: 'finding', facts: ['bare-full-current'] },
      { by: 'sheet', sheets: ['MS-02', 'MS-03', 'MS-04'] },
      { by: 'step', steps: ['electrics', 'battery'], benchOnly: true },
    ],
  },
] as const satisfies readonly Caution[];
