import { defineDefect } from './defect.ts';

export const deposit = defineDefect({
  id: 'deposit',
  name: 'Deposit',
  meaning: 'carbon, lacquer or varnish',
  said: ['deposit', 'coked'],
  where: ['RG', 'RING', 'PST', 'PORT-I', 'PORT-E', 'IV', 'EV', 'INJ', 'DCV', 'TURBO', 'INTM', 'EXHM', 'GLOW', 'PCH'],
  mark: 'area',
  quantities: ['thickness', 'filled'],
  lookFor: ['idling', 'leakage', 'hot oil'],
  ifLeft: ['rings or spools stick'],
  confirmedBy: ['V'],
  misses: 'Shows only where the surface can be seen.',
  spoken: (say) => say.with('deposit', say.phrase('thickness', 'thick') ?? say.phrase('filled', 'of the groove')),
});
