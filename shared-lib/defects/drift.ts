import { defineDefect } from './defect.ts';

export const drift = defineDefect({
  id: 'drift',
  name: 'Drift',
  meaning: 'moves under load with the control in neutral',
  said: ['drift', 'sink', 'drops'],
  where: ['CYL', 'LOCKV', 'CBV', 'LCHK', 'DCV', 'BOOM', 'ARM', 'MAST', 'BLADE', 'OUTR', 'FRM', 'HYD'],
  mark: 'span',
  quantities: ['drift', 'leak', 'temperature'],
  lookFor: ['seal', 'spool', 'lock valve', 'oil cooling down'],
  ifLeft: ['it drops'],
  confirmedBy: ['M', 'F'],
  misses: 'The test alone cannot tell the seal from the valve: split the circuit and repeat.',
  spoken: (say) => say.with('drifts', say.of('drift')),
});
