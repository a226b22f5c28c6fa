import { type NamedCondition, oneOf } from './named-condition.ts';

export const serviceBrake: NamedCondition = {
  id: 'service-brake',
  words: 'the service brake does not stop it',
  matches: ({ classes, defect, facts }) =>
    classes.has('service-brake') &&
    (oneOf(defect, 'inop', 'missing', 'broken') ||
      (oneOf(defect, 'lowout', 'wear', 'sealleak') && facts.has('past-limit'))),
};
