import { type Caution, commonPractice } from '../caution.ts';

export const travelAndProtection = [
  {
    id: 'CAU-15',
    word: 'DANGER',
    hazard: 'Brakes do not hold',
    text: 'Do not drive. Chock wheels, tag controls, move only by approved towing on level ground until brakes are repaired and tested.',
    audience: 'both',
    sources: ['29 CFR 1910.178(q)(1)', commonPractice],
    untilTested: true,
    calledBy: [
      { by: 'finding', at: { classes: ['brakes', 'service-brake', 'parking-brake'] } },
      { by: 'sheet', sheets: ['MS-22'], verdicts: ['beyond', 'shown'] },
    ],
  },
  {
    id: 'CAU-16',
    word: 'WARNING',
    hazard: 'Steering fails',
    text: 'Steering may fail without warning. Keep off roads, slopes and people until worn or loose parts are replaced and checked.',
    audience: 'both',
    sources: ['49 CFR 570.60', commonPractice],
    untilTested: true,
    calledBy: [
      { by: 'finding', at: { classes: ['steering', 'steering-joint'] } },
      { by: 'sheet', sheets: ['MS-21'] },
    ],
  },
  {
    id: 'CAU-17',
    word: 'WARNING',
    hazard: 'Altered rollover frame',
    text: 'A drilled, welded, bent or missing rollover frame may not protect. Do not operate until the maker or a competent person certifies or replaces it.',
    audience: 'both',
    sources: ['29 CFR 1928.51', '29 CFR 1926.1000', 'ISO 3471'],
    calledBy: [{ by: 'finding', at: { classes: ['rollover-frame'] } }],
  },
  {
    id: 'CAU-18',
    word: 'WARNING',
    hazard: 'Seat belt worn or missing',
    text: 'Wear the belt whenever the rollover frame is up. A frayed or missing belt means the frame cannot protect you.',
    audience: 'owner',
    sources: ['29 CFR 1928.51', commonPractice],
    calledBy: [{ by: 'finding', at: { classes: ['belt'] } }],
  },
  {
    id: 'CAU-19',
    word: 'DANGER',
    hazard: 'Caught in the bend of the frame',
    text: 'Never stand in the bend area with engine running. Fit the frame lock before working there; remove before driving.',
    audience: 'both',
    sources: ['ISO 10570'],
    calledBy: [
      { by: 'finding', at: { classes: ['articulation'] } },
      { by: 'machine', articulated: true },
    ],
  },
  {
    id: 'CAU-20',
    word: 'DANGER',
    hazard: 'Moves with nobody in the seat',
    text: 'With the interlock bypassed, arms or machine can move with nobody seated. Do not operate until restored and tested.',
    audience: 'both',
    sources: ['NIOSH alert on skid-steer loaders'],
    untilTested: true,
    calledBy: [
      { by: 'finding', at: { classes: ['interlock'] }, defects: ['bypass', 'inop', 'missing', 'broken', 'misfit'] },
    ],
  },
  {
    id: 'CAU-21',
    word: 'DANGER',
    hazard: 'Tyre or rim bursts',
    text: 'Never inflate or loosen a damaged or multi-part rim. Deflate by the core, restrain, stand clear; leave to trained tyre people.',
    audience: 'both',
    sources: ['29 CFR 1910.177'],
    calledBy: [
      { by: 'finding', at: { classes: ['wheel', 'rim'] } },
      { by: 'step', steps: ['wheel-off'], at: { classes: ['wheel', 'rim'] } },
    ],
  },
] as const satisfies readonly Caution[];
