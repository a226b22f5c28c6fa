import type { Finding } from '../model/finding.ts';
import type { Quantity } from '../model/quantity.ts';
import { quantityKind } from '../quantities/dictionary.ts';
import { showOff, showQuantity } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';

const origins: Readonly<Record<Quantity['origin'], string>> = {
  measured: '',
  photo: 'scaled from a photo',
  estimate: 'an estimate',
  'owner-reported': 'as the owner reports',
};

/** `Length 31 mm (± 0.5 mm)`; where the number comes from is said unless it was measured. */
function sayQuantity(id: string, quantity: Quantity, system: UnitSystem): string {
  const label = quantityKind(id)?.label ?? '';
  const isSaid = quantity.typed.includes('±');
  const unsure = isSaid ? null : showOff(quantity, system);
  const off = unsure === null ? '' : `±\u202f${unsure}`;
  const remarks = [off, origins[quantity.origin], quantity.how ?? ''].filter((remark) => remark !== '');
  const said = `${label} ${showQuantity(quantity, system)}`.trim();
  return remarks.length === 0 ? said : `${said} (${remarks.join(', ')})`;
}

/** Every quantity of a finding that has been given, in the order they were written. */
export function sayQuantities({ quantities }: Pick<Finding, 'quantities'>, system: UnitSystem): string[] {
  return Object.entries(quantities)
    .filter(([, quantity]) => quantity.typed.trim() !== '')
    .map(([id, quantity]) => sayQuantity(id, quantity, system));
}
