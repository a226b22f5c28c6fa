import { defineDefect } from './defect.ts';

export const bypassed = defineDefect({
  id: 'bypass',
  name: 'Safety device bypassed',
  meaning: 'safety or protection device defeated',
  said: ['bypass', 'jumpered'],
  where: ['ELEC', 'INTLK', 'NSW', 'SW', 'PROT', 'RV', 'TSTAT', 'FUEL', 'STOP', 'BRK', 'HYD', 'COOL', 'LOCKV'],
  mark: 'point',
  quantities: ['how', 'normally'],
  lookFor: ['it tripped too often'],
  ifLeft: ['injury', 'damage'],
  confirmedBy: ['F', 'V'],
  misses: 'Try every function it should stop: one that works may hide one that does not.',
  sought: 'bypass',
  spoken: (say) => say.with('bypassed', say.of('how')),
});
