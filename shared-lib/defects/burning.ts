import { defineDefect } from './defect.ts';

export const burning = defineDefect({
  id: 'burnt',
  name: 'Burning',
  meaning: 'metal missing because it melted or hot gas cut it away',
  said: ['burnt', 'burned'],
  where: ['EV', 'IV', 'EVS', 'IVS', 'PST', 'HG', 'HD', 'BORE', 'EXHM', 'CLUTCHD'],
  mark: 'area',
  quantities: ['area', 'depth', 'arc'],
  lookFor: ['gas leaking past the seat', 'a dribbling nozzle', 'wrong timing'],
  ifLeft: ['it loses compression'],
  confirmedBy: ['V'],
  misses: 'Shows only where the surface can be seen.',
  spoken: (say) => say.with('burnt away', say.of('area') ?? say.of('arc')),
});
