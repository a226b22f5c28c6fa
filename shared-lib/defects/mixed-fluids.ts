import { defineDefect } from './defect.ts';

export const mixedFluids = defineDefect({
  id: 'mixing',
  name: 'Mixed fluids',
  meaning: 'one fluid in another',
  said: ['emulsion', 'milky'],
  where: ['OIL-E', 'OIL-H', 'COOLANT', 'FUELF', 'SUMP', 'LUB', 'COOL', 'TANKH', 'TANK', 'GBX', 'RESV'],
  mark: 'point',
  quantities: ['mixed', 'levelChange', 'with'],
  lookFor: ['gasket', 'crack', 'cooler', 'hole in a liner', 'pump seal'],
  ifLeft: ['bearings fail'],
  confirmedBy: ['LAB', 'V'],
  misses: 'Condensation looks the same: a sample tells them apart.',
  spoken: (say) => say.with('mixed', say.phrase('with', '', 'with'), say.of('levelChange') ?? say.of('mixed')),
});
