import { defineDefect } from './defect.ts';

export const wear = defineDefect({
  id: 'wear',
  name: 'Wear',
  meaning: 'even loss of size',
  said: ['worn', 'wear'],
  where: 'anywhere',
  mark: 'span',
  quantities: ['wear', 'size', 'ofLimit', 'elongation'],
  lookFor: ['service', 'dirt', 'no grease'],
  ifLeft: ['play', 'leakage'],
  confirmedBy: ['M'],
  misses: 'Wear is a size: it shows by measuring, against the maker’s limit.',
  spoken: (say) => say.with('worn', say.of('wear') ?? say.of('elongation') ?? say.phrase('ofLimit', 'of the limit')),
});
