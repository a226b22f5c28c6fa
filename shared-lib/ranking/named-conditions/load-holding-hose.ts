import type { NamedCondition } from './named-condition.ts';

export const loadHoldingHose: NamedCondition = {
  id: 'load-holding-hose',
  words: 'a hose that holds a load is worn to its wire and has no lock valve',
  matches: ({ classes, facts }) =>
    classes.has('hydraulic') &&
    facts.has('to-reinforcement') &&
    facts.has('load-holding-line') &&
    facts.has('no-lock-valve'),
};
