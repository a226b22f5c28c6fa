import { defineDefect } from './defect.ts';

export const sinking = defineDefect({
  id: 'sunk',
  name: 'Sunk seat or flange',
  meaning: 'seat, flange or counterbore worn below its datum',
  said: ['sunk'],
  where: ['CBORE', 'LNR', 'FLG', 'IVS', 'EVS', 'IV', 'EV', 'INJB', 'PCH', 'HD', 'BLK'],
  mark: 'span',
  quantities: ['protrusion', 'recession', 'tilt'],
  lookFor: ['fretting', 'loose clamping'],
  ifLeft: ['the gasket fails'],
  confirmedBy: ['M'],
  misses: 'Dirt under the flange reads like a sunk seat: clean, turn and measure again.',
  spoken: (say) => say.with('sunk', say.of('recession') ?? say.phrase('protrusion', 'protrusion')),
});
