import type { Quantity } from '../model/quantity.ts';
import type { QuantityId } from '../quantities/dictionary.ts';
import { showNumber, showQuantity } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';

/** Builds the fragment a defect is said with, from the quantities that have been given. What is not given is left out. */
export interface Say {
  readonly has: (id: QuantityId) => boolean;
  /** `14 mm`, or null when it was not given. */
  readonly of: (id: QuantityId) => string | null;
  /** `60 × 110 mm`; null unless both were given in one unit. */
  readonly across: (first: QuantityId, second: QuantityId) => string | null;
  /** `0.3 mm deep, 180 mm`, or the one that was given. */
  readonly depthBy: (depth: QuantityId, other: QuantityId) => string | null;
  /** A quantity with words round it: `down to the reinforcement`, `16 % of the groove`. */
  readonly phrase: (id: QuantityId, after: string, before?: string) => string | null;
  /** `3 pieces`. */
  readonly counted: (id: QuantityId, one: string, many: string) => string | null;
  /** The name, then what is known, all after commas. */
  readonly listed: (name: string, ...known: readonly (string | null)[]) => string;
  /** The name, then what is known: the first stands beside it, the rest after commas. */
  readonly with: (name: string, ...known: readonly (string | null)[]) => string;
}

export function sayOf(quantities: Readonly<Record<string, Quantity>>, system: UnitSystem): Say {
  const given = (id: QuantityId): Quantity | null => {
    const quantity = quantities[id];
    return quantity === undefined || quantity.typed.trim() === '' ? null : quantity;
  };
  const of = (id: QuantityId): string | null => {
    const quantity = given(id);
    return quantity === null ? null : showQuantity(quantity, system);
  };
  const phrase = (id: QuantityId, after: string, before = ''): string | null => {
    const shown = of(id);
    return shown === null ? null : [before, shown, after].filter((part) => part !== '').join(' ');
  };
  return {
    has: (id) => given(id) !== null,
    of,
    phrase,
    across: (first, second) => {
      const [a, b] = [given(first), given(second)];
      if (a === null || b === null) return null;
      const [left, right] = [showNumber(a, system), showNumber(b, system)];
      if (left === null || right === null || left.unit !== right.unit) return null;
      return `${left.number}\u202f×\u202f${right.number}\u202f${right.unit}`;
    },
    depthBy: (depth, other) => [phrase(depth, 'deep'), of(other)].filter((part) => part !== null).join(', ') || null,
    counted: (id, one, many) => {
      const shown = of(id);
      return shown === null ? null : `${shown} ${shown === '1' ? one : many}`;
    },
    listed: (name, ...known) => [name, ...known.filter((part) => part !== null)].join(', '),
    with: (name, ...known) => {
      const said = known.filter((part) => part !== null);
      return said.length === 0 ? name : `${name} ${said.join(', ')}`;
    },
  };
}
