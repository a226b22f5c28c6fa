import { defineDefect } from './defect.ts';

export const overheatingMark = defineDefect({
  id: 'overheatmark',
  name: 'Overheating mark',
  meaning: 'colour change or softened metal from heat',
  said: ['overheated', 'blued'],
  where: ['DISC', 'DRUM', 'RBRG', 'MBRG', 'LNR', 'PST', 'ROD', 'CRK', 'HG', 'CLUTCHD', 'TURBO', 'EXHM', 'SHAFT'],
  mark: 'area',
  quantities: ['area', 'colour', 'hardness'],
  lookFor: ['low coolant or oil', 'dragging', 'slipping'],
  ifLeft: ['it loses strength', 'it goes out of shape'],
  confirmedBy: ['V'],
  misses: 'Colour can wash off. It tells of heat in the past, not of strength today.',
  spoken: (say) => say.with('heat colour', say.of('colour') ?? say.of('area')),
});
