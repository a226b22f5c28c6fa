import { defineDefect } from './defect.ts';

export const deformation = defineDefect({
  id: 'deform',
  name: 'Bent or collapsed',
  meaning: 'bent, twisted, dented or collapsed',
  said: ['bent', 'collapsed'],
  where: 'anywhere',
  mark: 'span',
  quantities: ['offset', 'angle', 'over'],
  lookFor: ['collision', 'fluid locked above a piston', 'overload'],
  ifLeft: ['it breaks', 'it does not line up'],
  confirmedBy: ['M'],
  misses: 'Small bends do not show by eye: measure over a stated length.',
  sought: 'bend or collapse',
  spoken: (say) => say.with('bent', say.of('offset') ?? say.of('angle'), say.phrase('over', 'of length', 'over')),
});
