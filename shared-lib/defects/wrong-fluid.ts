import { defineDefect } from './defect.ts';

export const wrongFluid = defineDefect({
  id: 'wrongfluid',
  name: 'Wrong fluid',
  meaning: 'fluid not to specification, or plain water',
  said: ['wrong fluid', 'wrong oil', 'wrong coolant'],
  where: ['COOLANT', 'COOL', 'OIL-E', 'OIL-H', 'FUELF', 'BRK', 'LUB', 'TANKH', 'SUMP', 'ELECTROLYTE', 'RESV'],
  mark: 'point',
  quantities: ['glycol', 'freeze', 'pH', 'inhibitor', 'label'],
  lookFor: ['topping-up habits'],
  ifLeft: ['scale', 'cavitation', 'seals swell'],
  confirmedBy: ['M', 'LAB'],
  misses: 'Test strips age: note their date.',
  spoken: (say) => say.listed('wrong fluid', say.phrase('glycol', 'glycol'), say.phrase('pH', '', 'pH')),
});
