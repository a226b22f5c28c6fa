import { type NamedCondition, oneOf } from './named-condition.ts';

/** Compare 29 CFR 1928.57. */
export const unguardedDriveline: NamedCondition = {
  id: 'unguarded-driveline',
  words: 'an unguarded driveline where people reach',
  matches: ({ classes, defect, facts }) =>
    classes.has('driveline') && oneOf(defect, 'noguard', 'missing') && facts.has('people-reach'),
};
