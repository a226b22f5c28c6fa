import { defineDefect } from './defect.ts';

export const wrongFastener = defineDefect({
  id: 'wrongfast',
  name: 'Wrong fastener',
  meaning: 'bolt, pin or clip of the wrong size, grade or length, or home-made',
  where: 'anywhere',
  mark: 'point',
  quantities: ['found', 'right', 'grade'],
  lookFor: ['improvised repair'],
  ifLeft: ['it fails'],
  confirmedBy: ['V', 'M'],
  misses: 'Marks on a head can be false.',
  spoken: (say) => say.with('wrong fastener', say.of('found')),
});
