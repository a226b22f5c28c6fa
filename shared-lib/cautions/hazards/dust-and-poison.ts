import { type Caution, commonPractice } from '../caution.ts';

export const dustAndPoison = [
  {
    id: 'CAU-24',
    word: 'WARNING',
    hazard: 'Brake and clutch dust',
    text: 'Old linings may hold asbestos. Do not blow or dry-brush. Use wet or filtered-vacuum methods and a fitted respirator; bag waste.',
    audience: 'bench',
    sources: ['29 CFR 1910.1001(f)(3) and appendix F'],
    calledBy: [
      { by: 'finding', at: { classes: ['brake-lining', 'clutch-lining'] } },
      { by: 'step', steps: ['wheel-off', 'lift-off', 'clean'], at: { classes: ['brake-lining', 'clutch-lining'] } },
    ],
  },
  {
    id: 'CAU-25',
    word: 'WARNING',
    hazard: 'Flying bits and air jets',
    text: 'Wear eye protection. Keep cleaning air below 30 psi (207 kPa) at the nozzle, with guards, never at skin.',
    audience: 'bench',
    sources: ['29 CFR 1910.242(b)', '29 CFR 1910.133'],
    calledBy: [{ by: 'step', steps: ['clean', 'grind', 'core-plug', 'hone'] }],
  },
  {
    id: 'CAU-28',
    word: 'WARNING',
    hazard: 'Poisonous coolant and waste fluids',
    text: 'Coolant is sweet and deadly to children and animals. Keep covered, label, wipe up, take oil, coolant and filters to legal disposal.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['coolant'] } },
      { by: 'step', steps: ['drain-coolant'] },
    ],
  },
] as const satisfies readonly Caution[];
