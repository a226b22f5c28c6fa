import { defineDefect } from './defect.ts';

export const corrodedContact = defineDefect({
  id: 'galv',
  name: 'Corroded contact',
  meaning: 'corrosion products on a terminal or contact',
  said: ['bad earth', 'bad ground', 'bad contact', 'green contact'],
  where: ['BAT', 'CBL', 'GND', 'SOL', 'STR', 'ALT', 'FUSE', 'HARN', 'SW', 'MSW', 'LAMP', 'INST'],
  mark: 'point',
  quantities: ['drop', 'resistance', 'current'],
  lookFor: ['acid', 'two different metals'],
  ifLeft: ['it does not crank', 'it heats up'],
  confirmedBy: ['E'],
  misses: 'Looks say little: only the voltage drop under current shows it.',
  spoken: (say) => say.listed('corroded contact', say.phrase('drop', '', 'drops') ?? say.of('resistance')),
});
