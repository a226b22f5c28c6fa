import { defineDefect } from './defect.ts';

export const polishing = defineDefect({
  id: 'polish',
  name: 'Polished bore',
  meaning: 'glazed bore, cross-hatch gone',
  where: ['LNR', 'BORE', 'IN'],
  mark: 'area',
  quantities: ['coverage', 'hatch'],
  lookFor: ['idling', 'wrong oil', 'worn rings'],
  ifLeft: ['it burns oil'],
  confirmedBy: ['V'],
  misses: 'Says nothing of the size: that has to be measured.',
  spoken: (say) => say.with('polished', say.of('coverage')),
});
