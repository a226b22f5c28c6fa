import { defineDefect } from './defect.ts';

export const scuffing = defineDefect({
  id: 'scuff',
  name: 'Scuffing',
  meaning: 'surface torn and smeared by metal rubbing on metal after the oil film was lost',
  said: ['scuff'],
  where: ['LNR', 'BORE', 'PST', 'RING', 'TAP', 'LOBE', 'PIN', 'DISC'],
  mark: 'area',
  quantities: ['width', 'length', 'coverage', 'transferred'],
  lookFor: [
    'a failed piston-cooling jet',
    'overheating',
    'too little clearance',
    'fuel washing the oil off',
    'no oil at the start',
  ],
  ifLeft: ['it seizes', 'blow-by'],
  confirmedBy: ['V'],
  misses: 'Looking shows the torn surface; the clearance that is left has to be measured.',
  spoken: (say) => say.with('scuffed', say.across('width', 'length'), say.of('coverage')),
});
