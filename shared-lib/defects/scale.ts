import { defineDefect } from './defect.ts';

export const scale = defineDefect({
  id: 'scale',
  name: 'Scale',
  meaning: 'hard mineral crust on a wet, hot surface',
  said: ['scale', 'furred'],
  where: ['HD', 'BLK', 'LNR', 'RAD', 'COOLER', 'OILCLR', 'CLRH', 'COOL'],
  mark: 'area',
  quantities: ['thickness', 'coverage', 'blocked'],
  lookFor: ['topping up with hard or plain water'],
  ifLeft: ['local boiling', 'cracks'],
  confirmedBy: ['V'],
  misses: 'Only where one can see, or with a borescope; how thick it is elsewhere stays unknown.',
  spoken: (say) => say.with('scale', say.phrase('thickness', 'thick') ?? say.phrase('blocked', 'of the tubes blocked')),
});
