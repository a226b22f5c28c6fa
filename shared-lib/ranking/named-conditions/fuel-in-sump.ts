import type { NamedCondition } from './named-condition.ts';

export const fuelInSump: NamedCondition = {
  id: 'fuel-in-sump',
  words: 'there is fuel in the engine oil',
  matches: ({ facts }) => facts.has('fuel-in-sump'),
};
