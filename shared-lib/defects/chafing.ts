import { defineDefect } from './defect.ts';

export const chafing = defineDefect({
  id: 'chafe',
  name: 'Chafing',
  meaning: 'line or wire rubbed through by its neighbour',
  said: ['chafe', 'rubbed'],
  where: ['HOSE', 'TUBE', 'HARN', 'CBL', 'HPL', 'LBK', 'LINE', 'COOL', 'HYD', 'FUEL'],
  mark: 'arrow',
  quantities: ['length', 'depth', 'layer', 'clearance'],
  lookFor: ['a missing clip', 'wrong length', 'wrong routing'],
  ifLeft: ['it bursts', 'short circuit', 'fire'],
  confirmedBy: ['V'],
  misses: 'The far side is not seen unless the line is turned.',
  spoken: (say) => say.with('rubbed', say.of('length'), say.phrase('layer', '', 'down to the')),
});
