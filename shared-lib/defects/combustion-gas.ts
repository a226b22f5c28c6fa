import { defineDefect } from './defect.ts';

export const combustionGas = defineDefect({
  id: 'combgas',
  name: 'Combustion gas in coolant',
  meaning: 'combustion gas in the cooling system',
  said: ['gasket', 'combustion gas'],
  where: ['COOL', 'COOLANT', 'HD', 'HG', 'LNR'],
  mark: 'point',
  quantities: ['testResult', 'bubbles', 'timeToColour'],
  lookFor: ['gasket', 'crack', 'liner protrusion'],
  ifLeft: ['it overheats'],
  confirmedBy: ['F', 'LAB'],
  misses:
    'The test misses leaks that close when cold or at idle, that open only under load, or that lie below the rings.',
  spoken: (say) => say.with('combustion gas', say.phrase('bubbles', 'bubbles per minute')),
});
