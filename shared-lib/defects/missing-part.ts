import { defineDefect } from './defect.ts';

export const missingPart = defineDefect({
  id: 'missing',
  name: 'Missing part',
  meaning: 'part, or a piece of one, is not there',
  where: 'anywhere',
  mark: 'point',
  quantities: ['count', 'size', 'recovered'],
  lookFor: ['breakage', 'forgotten at the last job'],
  ifLeft: ['loose pieces travel on', 'what it did is not done'],
  confirmedBy: ['V'],
  misses: 'Say where it was searched for: a piece not found may still be inside.',
  spoken: (say) => say.listed('missing', say.counted('count', 'piece', 'pieces')),
});
