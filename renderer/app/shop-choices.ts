import type { Shop } from '../../shared-lib/model/shop.ts';

export const unitOptions: readonly { value: Shop['units']; words: string; note: string }[] = [
  { value: 'metric', words: 'Metric', note: 'mm, bar, °C' },
  { value: 'us', words: 'US', note: 'in, psi, °F' },
];

export const paperOptions: readonly { value: Shop['paper']; words: string; note: string }[] = [
  { value: 'a4', words: 'A4', note: '210 × 297 mm' },
  { value: 'us-letter', words: 'US Letter', note: '8½ × 11 in' },
];
