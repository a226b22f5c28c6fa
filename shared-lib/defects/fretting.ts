import { defineDefect } from './defect.ts';

export const fretting = defineDefect({
  id: 'fret',
  name: 'Fretting',
  meaning: 'red-brown or black dust and pits between parts that are clamped but move',
  where: ['MAIN', 'MBRG', 'LNR', 'ROD', 'CAP', 'GND', 'CBL', 'HUB', 'WHEEL', 'BLK', 'CBORE', 'ROPS', 'PIN'],
  mark: 'area',
  quantities: ['area', 'depth'],
  lookFor: ['low clamping', 'vibration'],
  ifLeft: ['cracks start there'],
  confirmedBy: ['V', 'MG'],
  misses: 'Shows only once the parts are separated.',
  spoken: (say) => say.with('fretted', say.of('area') ?? say.phrase('depth', 'deep')),
});
