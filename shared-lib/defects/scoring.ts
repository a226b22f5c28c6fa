import { defineDefect } from './defect.ts';

export const scoring = defineDefect({
  id: 'score',
  name: 'Scoring',
  meaning: 'groove along the travel from a hard particle or an edge',
  said: ['score'],
  where: ['LNR', 'BORE', 'PST', 'ROD', 'CRK', 'MBRG', 'RBRG', 'CYL', 'DCV', 'PUMPH', 'DISC', 'DRUM', 'ROCK', 'CAMS'],
  mark: 'line',
  quantities: ['length', 'depth', 'count'],
  lookFor: ['dirt', 'a broken ring', 'a loose clip'],
  ifLeft: ['it leaks past', 'it burns oil'],
  confirmedBy: ['V', 'M'],
  misses: 'Depth by fingernail is a guess; a profile has to be measured.',
  spoken: (say) => say.with('scored', say.depthBy('depth', 'length')),
});
