import { type Caution, commonPractice } from '../caution.ts';

export const fireAndFumes = [
  {
    id: 'CAU-05',
    word: 'WARNING',
    hazard: 'Battery gas and acid',
    text: 'Batteries give explosive gas. No flames or sparks, ventilate, eye protection, ground lead off first and on last. Never load or charge a frozen or cracked one.',
    audience: 'both',
    sources: ['29 CFR 1910.178(g)', 'TM 9-6140-200-14'],
    calledBy: [
      { by: 'finding', at: { classes: ['battery'] } },
      { by: 'finding', facts: ['over-charged'] },
      { by: 'sheet', sheets: ['MS-01', 'MS-02', 'MS-05'] },
      { by: 'step', steps: ['battery'], benchOnly: true },
    ],
  },
  {
    id: 'CAU-07',
    word: 'WARNING',
    hazard: 'Fuel fire',
    text: 'No flame, smoking or hot work. Catch fuel, clean up, fix every leak before starting. Keep an extinguisher at hand.',
    audience: 'both',
    sources: ['29 CFR 1910.178(p)(4)', commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['fuel'] } },
      { by: 'finding', facts: ['fuel-in-sump'] },
      { by: 'step', steps: ['open-fuel'] },
    ],
  },
  {
    id: 'CAU-09',
    word: 'DANGER',
    hazard: 'Carbon monoxide',
    text: 'Never run an engine in a closed shed. Ventilate, use extraction and an alarm; headache means out into fresh air now.',
    audience: 'both',
    sources: ['29 CFR 1910.1000 Table Z-1', 'NIOSH'],
    calledBy: [
      { by: 'step', steps: ['run-indoors'] },
      { by: 'machine', fuels: ['petrol', 'LPG', 'gas'] },
      { by: 'finding', facts: ['co-above-limit-indoors'] },
      {
        by: 'finding',
        at: { parts: ['ENG/EXH'] },
        defects: ['sealleak', 'crack', 'broken', 'missing', 'burnt', 'corr', 'loose'],
      },
    ],
  },
  {
    id: 'CAU-26',
    word: 'WARNING',
    hazard: 'Solvent and starting-fluid vapour',
    text: 'Vapours burn and harm. Ventilate, no sparks, gloves. Never spray starting fluid into an engine with glow plugs or intake heater.',
    audience: 'bench',
    sources: ['the safety sheet of the product', commonPractice],
    calledBy: [{ by: 'finding', method: 'PT' }],
  },
  {
    id: 'CAU-33',
    word: 'DANGER',
    hazard: 'Hot work on closed or certified parts',
    text: 'Do not weld tanks, rims or rollover frames. Empty, clean and vent containers; disconnect batteries and electronics; fire watch.',
    audience: 'both',
    sources: ['29 CFR 1910.252(a)(3)', commonPractice],
    calledBy: [
      { by: 'step', steps: ['weld'] },
      // What asks to be welded and must not be.
      {
        by: 'finding',
        at: { classes: ['rollover-frame', 'rim'] },
        defects: ['crack', 'badrepair', 'broken', 'corr', 'missing'],
      },
      {
        by: 'finding',
        at: { parts: ['FUEL/TANK', 'HYD/TANKH'] },
        defects: ['crack', 'badrepair', 'broken', 'corr', 'sealleak'],
      },
    ],
  },
] as const satisfies readonly Caution[];
