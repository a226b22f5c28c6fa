import type { Layout } from '../../shared-lib/model/layout.ts';

/** The most common engine of the trade, to be changed by whoever has the machine before him. */
export const usualLayout: Layout = {
  engine: {
    arrangement: 'inline',
    cylinders: 4,
    heads: 1,
    valves: { intake: 1, exhaust: 1 },
    liner: 'unknown',
    rotation: 'CW',
    heading: 0,
    fuel: 'diesel',
    cooling: 'liquid',
  },
  numbering: { scheme: 'free-first' },
  hydraulics: [],
  volts: 12,
};

type Engine = Layout['engine'];

/** A layout with a part of its engine changed; what can no longer be true is set right. */
export function withEngine(layout: Layout, change: Partial<Engine>): Layout {
  const engine = { ...layout.engine, ...change };
  const heads = Math.min(engine.heads, engine.cylinders);
  const { linerStop, ...withoutStop } = engine;
  const keepsStop = engine.liner === 'wet' && linerStop !== undefined;
  const settled: Engine = { ...(keepsStop ? { ...withoutStop, linerStop } : withoutStop), heads };
  const hasChangedCylinders =
    engine.cylinders !== layout.engine.cylinders || engine.arrangement !== layout.engine.arrangement;
  const numbering =
    hasChangedCylinders && layout.numbering.scheme === 'list' ? { scheme: 'list' as const } : layout.numbering;
  return { ...layout, engine: settled, numbering };
}

/** Function words from free text: letters only, each once. */
export function readFunctionWords(typed: string): readonly string[] {
  const words = typed.toLowerCase().match(/[a-z]+/g) ?? [];
  return [...new Set(words)];
}

/** The same layout with an optional part added or taken away. */
export function withPart(layout: Layout, path: string, has: boolean): Layout {
  const others = (layout.has ?? []).filter((other) => other !== path);
  return { ...layout, has: has ? [...others, path] : others };
}

type NumberingEntry = NonNullable<Layout['numbering']['list']>[number];

/**
 * The maker's numbers of one bank as typed from the fan end to the flywheel: `1 3 5 7`.
 *
 * @returns null where a number is missing, repeated or not a number
 */
export function readBank(typed: string, count: number, bank?: NumberingEntry['bank']): NumberingEntry[] | null {
  const numbers = (typed.match(/\d+/g) ?? []).map(Number);
  const isComplete = numbers.length === count && new Set(numbers).size === count && numbers.every((n) => n >= 1);
  if (!isComplete) return null;
  return numbers.map((number, index) => ({ number, ...(bank === undefined ? {} : { bank }), fromFreeEnd: index + 1 }));
}
