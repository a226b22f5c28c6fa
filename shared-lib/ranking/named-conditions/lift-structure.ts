import type { NamedCondition } from './named-condition.ts';

/** A partial crack seen for the first time is to be mended before work; it gets here when its ends are proven to move. */
export const liftStructure: NamedCondition = {
  id: 'lift-structure',
  words: 'the lift structure is cracked through its load path, or the crack grows',
  matches: ({ classes, defect, facts }) =>
    (classes.has('lift-structure') || classes.has('outrigger')) &&
    defect === 'crack' &&
    (facts.has('through-load-path') || facts.has('growth-shown')),
};
