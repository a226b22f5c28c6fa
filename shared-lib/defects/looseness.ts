import { defineDefect } from './defect.ts';

export const looseness = defineDefect({
  id: 'loose',
  name: 'Loose',
  meaning: 'fastener or mount that does not clamp',
  said: ['loose'],
  where: 'anywhere',
  mark: 'point',
  quantities: ['torque', 'angle', 'marksShifted'],
  lookFor: ['vibration', 'fretting', 'paint in the joint'],
  ifLeft: ['it comes off'],
  confirmedBy: ['M', 'F'],
  misses: 'Torque is not clamping: a thread can bind and still be loose.',
  sought: 'looseness',
  spoken: (say) => say.with('loose', say.of('torque')),
});
