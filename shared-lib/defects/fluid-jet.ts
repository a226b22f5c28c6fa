import { defineDefect } from './defect.ts';

export const fluidJet = defineDefect({
  id: 'spray',
  name: 'Fluid jet',
  meaning: 'jet or mist of fluid under pressure',
  said: ['spray'],
  where: ['HYD', 'HPL', 'INJ', 'FUEL', 'BRK', 'STEER', 'TRK'],
  mark: 'arrow',
  quantities: ['fluid', 'pressure', 'reach'],
  lookFor: ['pinhole', 'crack'],
  ifLeft: ['it goes through skin', 'fire'],
  confirmedBy: ['V'],
  misses: 'Look from a distance, with a card: never by hand.',
  spoken: (say) => say.with('jet', say.phrase('fluid', '', 'of'), say.phrase('reach', '', 'reaching')),
});
