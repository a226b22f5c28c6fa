import { defineDefect } from './defect.ts';

export const warping = defineDefect({
  id: 'warp',
  name: 'Warping',
  meaning: 'surface no longer flat',
  said: ['warp', 'not flat'],
  where: ['HD', 'BLK', 'DECK', 'FIRE', 'EXHM', 'INTM', 'FLANGE', 'CLUTCHD', 'DISC'],
  mark: 'span',
  quantities: ['flatness', 'flatnessLocal'],
  lookFor: ['overheating', 'bolts tightened in the wrong order'],
  ifLeft: ['the gasket leaks'],
  confirmedBy: ['M'],
  misses: 'Measured unclamped: it may straighten under the bolts.',
  spoken: (say) => say.with('out of flat', say.of('flatness') ?? say.of('flatnessLocal')),
});
