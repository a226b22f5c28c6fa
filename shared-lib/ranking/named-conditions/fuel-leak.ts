import { type NamedCondition, oneOf } from './named-condition.ts';

export const fuelLeak: NamedCondition = {
  id: 'fuel-leak',
  words: 'fuel leaks under pressure or near heat',
  matches: ({ classes, defect, facts }) =>
    classes.has('fuel') &&
    oneOf(defect, 'sealleak', 'spray', 'crack', 'broken', 'chafe') &&
    (facts.has('pressurised') || facts.has('near-heat')),
};
