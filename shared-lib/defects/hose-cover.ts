import { defineDefect } from './defect.ts';

export const hoseCover = defineDefect({
  id: 'hosecover',
  name: 'Hose cover damage',
  meaning: 'hose cover cracked, blistered, soft, swollen or rubbed',
  where: ['HOSE', 'HYD', 'COOL', 'FUEL', 'BRK', 'STEER', 'AIR'],
  mark: 'area',
  quantities: ['length', 'layer', 'blisters', 'dateCode'],
  lookFor: ['heat', 'age', 'the wrong fluid', 'rubbing'],
  ifLeft: ['it bursts'],
  confirmedBy: ['V'],
  misses: 'The inner tube and the crimp cannot be judged from outside.',
  spoken: (say) => say.with('cover worn', say.of('length'), say.phrase('layer', '', 'down to the')),
});
