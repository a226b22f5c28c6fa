import { defineDefect } from './defect.ts';

export const leak = defineDefect({
  id: 'sealleak',
  name: 'Leak',
  meaning: 'fluid past a seal, joint or gasket',
  said: ['leak', 'drip', 'weep', 'seep'],
  where: ['HYD', 'COOL', 'FUEL', 'ENG', 'BRK', 'STEER', 'DRV', 'TURBO'],
  mark: 'arrow',
  quantities: ['class', 'drops', 'leak', 'fluid'],
  lookFor: ['age', 'a scored rod', 'pressure', 'wear'],
  ifLeft: ['fluid is lost', 'it slips', 'fire', 'the ground is spoiled'],
  confirmedBy: ['F'],
  misses: 'A wet area shows the path, not the source: clean it, run it, look again, or use dye.',
  spoken: (say) =>
    say.has('leak') || say.has('drops')
      ? say.with('leaks', say.of('leak') ?? say.of('drops'))
      : say.listed('leak', say.phrase('class', '', 'class')),
});
