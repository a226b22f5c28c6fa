import { defineDefect } from './defect.ts';

export const corrosion = defineDefect({
  id: 'corr',
  name: 'Corrosion',
  meaning: 'metal wasted by rust or chemical attack',
  said: ['corro', 'rust'],
  where: 'anywhere',
  mark: 'area',
  quantities: ['area', 'depth', 'loss'],
  lookFor: ['wrong fluid', 'stray current', 'salt', 'manure'],
  ifLeft: ['it leaks', 'weak section'],
  confirmedBy: ['M', 'UT'],
  misses: 'Blistered paint hides it. How much is left has to be measured.',
  spoken: (say) => say.with('corroded', say.phrase('depth', 'deep') ?? say.phrase('loss', 'of the section')),
});
