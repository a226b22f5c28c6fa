import { type Caution, commonPractice } from '../caution.ts';

export const atWork = [
  {
    id: 'CAU-36',
    word: 'CAUTION',
    hazard: 'Slips and falls, working alone',
    text: 'Keep three points of contact, clean boots and steps. Working alone: tell someone, carry a phone.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { parts: ['FRM/STEP', 'FRM/RAIL-H'] } },
      { by: 'step', steps: ['climb'], benchOnly: true },
    ],
  },
  {
    id: 'CAU-37',
    word: 'CAUTION',
    hazard: 'Noise',
    text: 'Wear hearing protection near running engines.',
    audience: 'bench',
    sources: ['29 CFR 1910.95', commonPractice],
    // The sheets that are filled in beside a running engine.
    calledBy: [
      { by: 'sheet', sheets: ['MS-05', 'MS-09', 'MS-22', 'MS-25', 'MS-27'] },
      { by: 'step', steps: ['run', 'run-indoors'] },
    ],
  },
] as const satisfies readonly Caution[];
