import { type Caution, commonPractice } from '../caution.ts';

export const movingParts = [
  {
    id: 'CAU-08',
    word: 'WARNING',
    hazard: 'Unexpected start',
    text: 'Stop engine, take the key, isolate battery, tag controls. Nobody starts it but the person who hung the tag.',
    audience: 'both',
    sources: ['29 CFR 1910.147'],
    calledBy: [
      { by: 'finding', at: { classes: ['starter', 'fan-drive'] } },
      { by: 'finding', at: { parts: ['DRV/PTO'] } },
      { by: 'step', steps: ['open-engine'] },
      { by: 'step', steps: ['lift-off'], at: { classes: ['engine', 'fan-drive', 'starter', 'charging'] } },
    ],
  },
  {
    id: 'CAU-10',
    word: 'WARNING',
    hazard: 'Caught in fan, belt or pulley',
    text: 'Keep hands, sleeves, leads and hair clear of turning parts; refit guards before running. Electric fans can start by themselves.',
    audience: 'both',
    sources: ['29 CFR 1928.57', commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['fan-drive'] } },
      { by: 'sheet', sheets: ['MS-05', 'MS-08'] },
    ],
  },
  {
    id: 'CAU-11',
    word: 'DANGER',
    hazard: 'Wound in by a driveline',
    text: 'An unguarded turning shaft kills in a second. Shut off, wait for standstill, fit intact shields before use.',
    audience: 'both',
    sources: ['29 CFR 1928.57'],
    calledBy: [
      { by: 'finding', at: { parts: ['DRV/PTO'] } },
      { by: 'finding', at: { classes: ['driveline'] }, defects: ['noguard'] },
    ],
  },
  {
    id: 'CAU-13',
    word: 'WARNING',
    hazard: 'Crank spins during the air test',
    text: 'Air at TDC can turn the crank hard. Remove bars and hands from fan and pulley; raise pressure slowly.',
    audience: 'bench',
    sources: [commonPractice],
    calledBy: [{ by: 'sheet', sheets: ['MS-11'] }],
  },
  {
    id: 'CAU-14',
    word: 'WARNING',
    hazard: 'Fluid above a piston',
    text: 'Fluid above a piston will bend the rod. Stop cranking, open injector holes, turn by hand, stand clear of jets.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', facts: ['fluid-in-cylinder'] },
      { by: 'sheet', sheets: ['MS-03'], verdicts: ['beyond'] },
    ],
  },
  {
    id: 'CAU-32',
    word: 'WARNING',
    hazard: 'Engine will not stop',
    text: 'Have a plate ready to block the intake and a stop plan before starting after pump or governor work.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['stop-control'] } },
      { by: 'finding', at: { parts: ['FUEL/INJP/GOV'] } },
      { by: 'finding', at: { classes: ['turbocharger'] }, defects: ['sealleak', 'wear', 'broken'] },
      { by: 'finding', at: { parts: ['ENG/AIR'] }, defects: ['sealleak', 'contam'] },
      { by: 'step', steps: ['open-fuel'], at: { parts: ['FUEL/INJP'] } },
    ],
  },
] as const satisfies readonly Caution[];
