import { defineDefect } from './defect.ts';

export const wearStep = defineDefect({
  id: 'wearstep',
  name: 'Wear step',
  meaning: 'ridge at the edge of a worn zone',
  where: ['LNR', 'BORE', 'CRK', 'MJ', 'CP', 'DCV', 'DISC', 'DRUM', 'SEALF', 'SEALR', 'RODH'],
  mark: 'span',
  quantities: ['step'],
  lookFor: ['long service', 'dirt'],
  ifLeft: ['it breaks new rings'],
  confirmedBy: ['M'],
  misses: 'A step that can be felt still has to be measured.',
  spoken: (say) => say.with('wear step', say.of('step')),
});
