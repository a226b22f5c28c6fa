import { unitFor } from '../../quantities/show-quantity.ts';
import { convertDifference, type UnitSystem, unitNamed } from '../../quantities/units.ts';

/** A plot's numbers in the unit of the shop; lengths and pressures only, so that no offset is in play. */
export function inShopUnits(unit: string, system: UnitSystem): { unit: string; of: (value: number) => number } {
  const [from, to] = [unitNamed(unit), unitNamed(unitFor(unit, system))];
  if (from === null || to === null) return { unit, of: (value) => value };
  return { unit: to.symbol, of: (value) => convertDifference(value, from, to) ?? value };
}
