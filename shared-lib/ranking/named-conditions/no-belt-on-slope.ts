import { type NamedCondition, oneOf } from './named-condition.ts';

export const noBeltOnSlope: NamedCondition = {
  id: 'no-belt-on-slope',
  words: 'no seat belt on a machine that works on slopes',
  matches: ({ classes, defect, use }) =>
    classes.has('belt') && use.slope && oneOf(defect, 'missing', 'broken', 'bypass'),
};
