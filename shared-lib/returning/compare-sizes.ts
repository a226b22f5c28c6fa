import type { ComparedSize } from '../contract/returning.ts';
import type { Finding } from '../model/finding.ts';
import type { Quantity } from '../model/quantity.ts';
import { quantityKind } from '../quantities/dictionary.ts';
import { fallbackUncertainty } from '../quantities/fallback-uncertainty.ts';
import { showQuantity } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { compareValues, type ValueThen } from './compare-values.ts';

/** The sizes that a condition had then and has now, or with `stop` why they are not one thing's. Words and what stands for a place only are not compared. */
export function compareSizes(
  then: Finding,
  now: Finding,
  { hours, units, stop }: { readonly hours: number | null; readonly units: UnitSystem; readonly stop: string | null },
): ComparedSize[] {
  return Object.entries(now.quantities).flatMap(([id, quantity]): ComparedSize[] => {
    const kind = quantityKind(id);
    const before = then.quantities[id];
    if (kind === null || kind.range === null || kind.bad === 'neither' || before === undefined) return [];
    const numberOf = (each: Quantity): ValueThen | null =>
      each.value === null
        ? null
        : {
            value: each.value,
            unit: each.unit,
            uncertainty: each.uncertainty ?? fallbackUncertainty(kind, each.value, each.unit, each.origin),
          };
    const [was, is] = [numberOf(before), numberOf(quantity)];
    if (was === null || is === null) return [];
    const shown = (each: ValueThen) => showQuantity(each === was ? before : quantity, units);
    const compared = compareValues({ what: kind.label, bad: kind.bad, was, now: is, hours, units, shown });
    return [
      {
        ...compared,
        ...(stop === null ? {} : { change: `not comparable: ${stop}`, state: 'not-comparable' as const }),
        quantity: id,
      },
    ];
  });
}
