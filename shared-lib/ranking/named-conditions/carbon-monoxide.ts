import type { NamedCondition } from './named-condition.ts';

export const carbonMonoxide: NamedCondition = {
  id: 'carbon-monoxide',
  words: 'carbon monoxide indoors is above the local limit',
  matches: ({ facts }) => facts.has('co-above-limit-indoors'),
};
