import type { Finding, MethodCode } from '../model/finding.ts';
import type { ShapeName } from '../model/mark.ts';
import type { QuantityId } from '../quantities/dictionary.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { type Say, sayOf } from './say.ts';

/** One kind of defect: what it is, where it comes, how it is drawn, measured, proved and said. It proposes; it never judges. */
export interface Defect<Id extends string = string> {
  readonly id: Id;
  /** As a heading. */
  readonly name: string;
  readonly meaning: string;
  /** After 'not examined for' and before 'not found'. */
  readonly sought: string;
  /** Other beginnings of words it is said with, in lower case, beside its name. */
  readonly said?: readonly string[];
  /** Codes of the parts it belongs to (with everything below them), or anywhere. It only sorts the picker. */
  readonly where: 'anywhere' | readonly string[];
  /** The shape a mark on a photo begins with. */
  readonly mark: ShapeName;
  /** What can be measured of it, most telling first. */
  readonly quantities: readonly QuantityId[];
  /** Causes to look for. */
  readonly lookFor: readonly string[];
  /** What it leads to if it is left. */
  readonly ifLeft: readonly string[];
  /** Methods that can confirm it; by any other it stays suspected. */
  readonly confirmedBy: readonly MethodCode[];
  /** What those methods miss, and what looks like it. */
  readonly misses: string;
  /** The fragment a report says it with: `crack 14 mm`. */
  readonly speak: (finding: Pick<Finding, 'quantities'>, system?: UnitSystem) => string;
}

interface Definition<Id extends string> extends Omit<Defect<Id>, 'speak' | 'sought'> {
  /** Where the name in lower case will not do. */
  readonly sought?: string;
  readonly spoken: (say: Say) => string;
}

export function defineDefect<const Id extends string>({ spoken, ...rest }: Definition<Id>): Defect<Id> {
  return {
    sought: rest.name.toLowerCase(),
    ...rest,
    speak: (finding, system = 'metric') => spoken(sayOf(finding.quantities, system)),
  };
}
