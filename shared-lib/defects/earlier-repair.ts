import { defineDefect } from './defect.ts';

export const earlierRepair = defineDefect({
  id: 'badrepair',
  name: 'Earlier repair',
  meaning: 'earlier repair not to accepted practice',
  said: ['bad repair'],
  where: 'anywhere',
  mark: 'area',
  quantities: ['found', 'since'],
  lookFor: ['cost', 'field fix'],
  ifLeft: ['it hides the cause'],
  confirmedBy: ['V'],
  misses: 'What was meant is not known: describe, do not accuse.',
  spoken: (say) => say.with('earlier repair', say.of('found')),
});
