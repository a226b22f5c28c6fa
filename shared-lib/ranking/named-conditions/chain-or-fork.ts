import { type NamedCondition, oneOf } from './named-condition.ts';

export const chainOrFork: NamedCondition = {
  id: 'chain-or-fork',
  words: 'the chain or fork is past its limit',
  matches: ({ classes, defect, facts }) =>
    (classes.has('chain') || classes.has('fork')) && (facts.has('past-limit') || oneOf(defect, 'broken', 'missing')),
};
