import { defineDefect } from './defect.ts';

export const cavitationErosion = defineDefect({
  id: 'caverode',
  name: 'Cavitation erosion',
  meaning: 'sponge-like pitting of a wet surface by collapsing vapour bubbles',
  said: ['cavitat', 'pinhole'],
  where: ['LNR', 'BLK', 'WPUMP', 'PUMPH'],
  mark: 'area',
  quantities: ['depth', 'wall', 'hole', 'area'],
  lookFor: ['plain water', 'no additive', 'low cap pressure', 'a loose liner', 'a starved suction side'],
  ifLeft: ['pinhole', 'coolant in the oil'],
  confirmedBy: ['V', 'M', 'UT', 'PR'],
  misses:
    'A hole right through may close when it is unloaded; a pressure test from the jacket, cold and warm, finds it. Ultrasonic readings scatter on rough pits.',
  spoken: (say) =>
    say.has('hole')
      ? say.with('eaten through', say.of('hole'))
      : say.with('eaten by cavitation', say.phrase('depth', 'deep')),
});
