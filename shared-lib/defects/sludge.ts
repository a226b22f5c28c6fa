import { defineDefect } from './defect.ts';

export const sludge = defineDefect({
  id: 'sludge',
  name: 'Sludge',
  meaning: 'soft deposit, emulsion or gel',
  said: ['sludge'],
  where: ['SUMP', 'LUB', 'TANK', 'TANKH', 'RAD', 'FILT', 'FILH', 'OIL-E', 'OIL-H', 'COOLANT', 'RESV', 'BRE'],
  mark: 'area',
  quantities: ['depth', 'volume', 'colour'],
  lookFor: ['fluids mixing', 'neglected oil', 'additives that do not agree'],
  ifLeft: ['it starves the part behind it'],
  confirmedBy: ['V', 'LAB'],
  misses: 'The eye sees that it is there; what it is made of needs a sample.',
  spoken: (say) => say.with('sludge', say.phrase('depth', 'deep') ?? say.of('volume')),
});
