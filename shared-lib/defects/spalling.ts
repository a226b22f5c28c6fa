import { defineDefect } from './defect.ts';

export const spalling = defineDefect({
  id: 'spall',
  name: 'Spalling',
  meaning: 'flakes out of a loaded surface',
  said: ['spall'],
  where: ['LOBE', 'CAMS', 'TAP', 'MBRG', 'RBRG', 'HUB', 'GBX', 'DIFF', 'FINAL', 'TIMG', 'KPIN', 'TRK'],
  mark: 'area',
  quantities: ['area', 'depth', 'coverage'],
  lookFor: ['fatigue', 'dirt', 'parts not aligned'],
  ifLeft: ['loose pieces', 'it fails'],
  confirmedBy: ['V'],
  misses: 'Cracks under the surface stay hidden.',
  spoken: (say) => say.with('flaking', say.of('area') ?? say.of('coverage')),
});
