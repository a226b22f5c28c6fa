import type { NamedCondition } from './named-condition.ts';

/** It stops the job. Missing support hardware by itself is to be mended before work. */
export const raisedUnsupported: NamedCondition = {
  id: 'raised-unsupported',
  words: 'a raised or articulated part has no proper support for the job in hand',
  matches: ({ facts }) => facts.has('raised-unsupported'),
};
