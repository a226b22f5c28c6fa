import { defineDefect } from './defect.ts';

export const hoseEnd = defineDefect({
  id: 'crimp',
  name: 'Hose end failing',
  meaning: 'hose end moving, wrong or corroded',
  where: ['HOSE', 'COUP', 'HYD', 'BRK', 'STEER', 'FUEL'],
  mark: 'point',
  quantities: ['gap', 'rotated'],
  lookFor: ['poor assembly', 'pull on the hose'],
  ifLeft: ['it blows off'],
  confirmedBy: ['V'],
  misses: 'Only a shifted paint mark or a gap shows from outside; how much it still holds does not.',
  sought: 'failing hose end',
  spoken: (say) => say.with('hose end moving', say.phrase('gap', 'gap')),
});
