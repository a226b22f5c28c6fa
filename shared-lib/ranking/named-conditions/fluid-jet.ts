import type { NamedCondition } from './named-condition.ts';

export const fluidJet: NamedCondition = {
  id: 'fluid-jet',
  words: 'fluid sprays where people are',
  matches: ({ defect, facts, use }) => defect === 'spray' && (use.peopleNear || facts.has('people-reach')),
};
