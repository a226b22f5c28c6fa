import { defineDefect } from './defect.ts';

export const noise = defineDefect({
  id: 'noise',
  name: 'Noise or vibration',
  meaning: 'abnormal sound or vibration',
  said: ['noise', 'vibrat', 'knock'],
  where: 'anywhere',
  mark: 'point',
  quantities: ['rpm', 'when', 'loudest'],
  lookFor: ['bearing', 'knock', 'gear'],
  ifLeft: ['it depends on the cause'],
  confirmedBy: ['F'],
  misses: 'A symptom only: it never proves the cause.',
  spoken: (say) => say.with('noise', say.phrase('rpm', '', 'at')),
});
