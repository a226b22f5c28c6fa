import { defineDefect } from './defect.ts';

export const breakage = defineDefect({
  id: 'broken',
  name: 'Breakage',
  meaning: 'part in two pieces or more',
  said: ['broke', 'snapped'],
  where: 'anywhere',
  mark: 'point',
  quantities: ['pieces', 'allFound'],
  lookFor: ['fatigue', 'overload'],
  ifLeft: ['loose pieces travel on'],
  confirmedBy: ['V'],
  misses: 'Shows only where the part can be seen whole.',
  spoken: (say) => say.with('broken', say.phrase('pieces', 'pieces', 'in')),
});
