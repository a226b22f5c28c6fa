import { defineDefect } from './defect.ts';

export const seizure = defineDefect({
  id: 'seizure',
  name: 'Seizure',
  meaning: 'parts stuck, or that have been stuck',
  said: ['seiz', 'stuck'],
  where: ['PST', 'MBRG', 'RBRG', 'TURBO', 'DCV', 'BRK', 'WPUMP', 'INJ', 'INJP', 'STR', 'ALT', 'HUB', 'PARK'],
  mark: 'point',
  quantities: ['breakaway', 'freed'],
  lookFor: ['scuffing', 'rust', 'fluid locked above a piston'],
  ifLeft: ['it breaks the rod or the shaft'],
  confirmedBy: ['F'],
  misses: 'That it is stuck says nothing of the cause: that needs stripping.',
  spoken: (say) => say.with('seized', say.of('breakaway')),
});
