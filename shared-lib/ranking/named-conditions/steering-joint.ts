import { type NamedCondition, oneOf } from './named-condition.ts';

export const steeringJoint: NamedCondition = {
  id: 'steering-joint',
  words: 'steering is loose, cracked or past its limit',
  matches: ({ classes, defect, facts, use }) =>
    classes.has('steering') &&
    (oneOf(defect, 'loose', 'crack', 'missing', 'broken') ||
      (defect === 'play' && facts.has('past-limit') && (use.road || use.slope))),
};
