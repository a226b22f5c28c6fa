import type { NamedCondition } from './named-condition.ts';

export const loadDrift: NamedCondition = {
  id: 'load-drift',
  words: 'what holds the load lets it down',
  matches: ({ classes, defect, facts }) => defect === 'drift' && facts.has('under-load') && classes.has('load-holding'),
};
