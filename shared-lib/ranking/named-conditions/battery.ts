import type { NamedCondition } from './named-condition.ts';

export const battery: NamedCondition = {
  id: 'battery',
  words: 'the battery is cracked or over-charged',
  matches: ({ classes, defect, facts }) => facts.has('over-charged') || (classes.has('battery') && defect === 'crack'),
};
