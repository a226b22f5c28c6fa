import { defineDefect } from './defect.ts';

export const brinelling = defineDefect({
  id: 'brinell',
  name: 'Brinelling',
  meaning: 'dents at the spacing of the balls or rollers',
  where: ['HUB', 'KPIN', 'WPUMP', 'ALT', 'GBX', 'DIFF', 'FINAL', 'TURBO', 'BALL', 'ART'],
  mark: 'point',
  quantities: ['count', 'spacing', 'depth'],
  lookFor: ['shock', 'vibration while standing'],
  ifLeft: ['noise', 'flaking'],
  confirmedBy: ['V', 'MG'],
  misses: 'Shows only once the bearing is open and clean.',
  spoken: (say) => say.with('dented races', say.counted('count', 'dent', 'dents')),
});
