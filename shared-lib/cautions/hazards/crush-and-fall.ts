import { type Caution, commonPractice, type PlaceRule } from '../caution.ts';

/** Held up by oil or steel: what comes down when it is opened or gives way. A steering cylinder holds nothing up. */
const heldUp: PlaceRule = {
  classes: ['load-holding', 'arm-support', 'lift-structure'],
  notClasses: ['steering', 'stability-indicator'],
};
const attachments: PlaceRule = { parts: ['FRM/BUCKET', 'FRM/BLADE'] };
const actuatorLines: PlaceRule = { classes: ['hydraulic-line'], notClasses: ['steering', 'brakes'], ofActuator: true };
/** A cylinder that keeps the machine from tipping, or a load in the air. */
const steadying = ['jack', 'outrigger', 'stabiliser', 'stabilizer', 'leg', 'hoist'] as const;

export const crushAndFall = [
  {
    id: 'CAU-01',
    word: 'DANGER',
    hazard: 'Crushed under a raised part',
    text: 'Never go under a part held only by oil, jack or hoist. Lower it, or block it mechanically with supports made for that load.',
    audience: 'both',
    sources: ['29 CFR 1926.600(a)(3)(i)', 'ISO 10533'],
    calledBy: [
      { by: 'finding', at: heldUp },
      { by: 'finding', at: attachments },
      { by: 'finding', at: actuatorLines },
      { by: 'finding', at: { classes: ['hydraulic'], notClasses: ['steering', 'brakes'] }, defects: ['drift'] },
      { by: 'sheet', sheets: ['MS-20'] },
      { by: 'step', steps: ['open-hydraulic', 'lift-off'], at: heldUp },
      { by: 'step', steps: ['open-hydraulic', 'lift-off'], at: attachments },
      { by: 'step', steps: ['open-hydraulic', 'lift-off'], at: actuatorLines },
    ],
  },
  {
    id: 'CAU-12',
    word: 'WARNING',
    hazard: 'Falling heavy part',
    text: 'Weigh before lifting. Use rated lifting gear and eyes; stay out from under; two people for heads over about 25 kg.',
    audience: 'bench',
    sources: [commonPractice],
    calledBy: [{ by: 'step', steps: ['lift-off', 'wheel-off'] }],
  },
  {
    id: 'CAU-22',
    word: 'DANGER',
    hazard: 'Machine or load comes down',
    text: 'Do not lift. A creeping jack or hoist cylinder can overturn the machine. Repair, then function-test with a competent person.',
    audience: 'both',
    sources: ['29 CFR 1926.1404(q)', '29 CFR 1926.1412', commonPractice],
    untilTested: true,
    calledBy: [
      { by: 'finding', at: { classes: ['outrigger', 'lock-valve', 'stability-indicator'] } },
      { by: 'finding', at: { classes: ['hydraulic-cylinder'], functions: steadying } },
      { by: 'sheet', sheets: ['MS-20'], at: { classes: ['outrigger', 'lock-valve'] } },
      { by: 'sheet', sheets: ['MS-20'], at: { classes: ['hydraulic-cylinder'], functions: steadying } },
    ],
  },
  {
    id: 'CAU-23',
    word: 'WARNING',
    hazard: 'Forks or chain let the load fall',
    text: "Take the truck out of service. Chains and forks past limits are replaced in pairs to maker's instructions, never welded or shortened.",
    audience: 'both',
    sources: ['29 CFR 1910.178(p)(1)', 'ISO 5057'],
    calledBy: [
      { by: 'finding', at: { classes: ['chain', 'fork'] } },
      { by: 'sheet', sheets: ['MS-28'], at: { classes: ['chain', 'fork'] } },
    ],
  },
] as const satisfies readonly Caution[];
