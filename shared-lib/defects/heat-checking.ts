import { defineDefect } from './defect.ts';

export const heatChecking = defineDefect({
  id: 'heatcheck',
  name: 'Heat checking',
  meaning: 'shallow network of fine surface cracks from repeated heating and cooling',
  said: ['heat crack'],
  where: ['HD', 'PST', 'DISC', 'DRUM', 'CLUTCHD', 'EXHM'],
  mark: 'area',
  quantities: ['length', 'width', 'area', 'longest', 'spacing'],
  lookFor: ['repeated heating and cooling', 'a dragging brake or clutch'],
  ifLeft: ['the fine cracks join into one'],
  confirmedBy: ['MG', 'PT'],
  misses: 'The depth stays unknown without cutting or ultrasonic testing.',
  spoken: (say) => say.with('heat checking', say.across('length', 'width') ?? say.of('area')),
});
