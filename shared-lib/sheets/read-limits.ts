import type { QuantityKind } from '../quantities/dictionary.ts';
import { readQuantity } from '../quantities/read-quantity.ts';
import { unitNamed } from '../quantities/units.ts';
import { type Edges, type Limit, limitProblem } from '../verdict/limit.ts';
import type { TypedLimit } from './outcome.ts';
import type { InputProblem } from './read-fields.ts';
import type { ResultSpec, Sheet } from './sheet-kind.ts';

/** The limits typed for a sheet's results; one that cannot be used is named and judges nothing. */
export function readLimits(
  sheet: Sheet,
  typed: Readonly<Record<string, TypedLimit>>,
): { limits: ReadonlyMap<string, Limit>; problems: InputProblem[] } {
  const limits = new Map<string, Limit>();
  const problems: InputProblem[] = [];
  for (const [of, limit] of Object.entries(typed)) {
    const spec = specOf(sheet, of);
    const refuse = (what: string, kept: string) =>
      problems.push({ input: `limit: ${of}`, weight: 'not understood', what, kept });
    if (spec === null) {
      refuse(`This sheet has no result “${of}”.`, JSON.stringify(limit));
      continue;
    }
    const edges: { -readonly [Edge in keyof Edges]: Edges[Edge] } = {};
    let understood = true;
    for (const edge of ['min', 'max', 'badBelow', 'badAbove'] as const) {
      const text = limit[edge];
      if (text === undefined || text.trim() === '') continue;
      const value = numberIn(text, spec.unit, spec.difference);
      if (value === null) {
        understood = false;
        refuse(`The limit of “${of}” is a number${spec.unit === '' ? '' : ` in ${spec.unit}`}.`, text);
      } else edges[edge] = value;
    }
    const problem = understood ? limitProblem(edges) : null;
    if (problem !== null) refuse(`The limit of “${of}” cannot be used: ${problem}.`, JSON.stringify(limit));
    else if (understood) {
      limits.set(of, { ...edges, source: limit.source, ...(limit.page === undefined ? {} : { page: limit.page }) });
    }
  }
  return { limits, problems };
}

/** The number of a text in a unit; a unit of the sheet alone may be typed or left out. */
export function numberIn(text: string, unit: string, difference?: true): number | null {
  const bare = text.trim();
  if (unitNamed(unit) !== null) return readQuantity(bare, unit, 'measured', kindOf(unit, difference)).value;
  const number = unit !== '' && bare.endsWith(unit) ? bare.slice(0, bare.length - unit.length).trim() : bare;
  return readQuantity(number, '', 'measured').value;
}

const kindOf = (unit: string, difference: true | undefined): QuantityKind => ({
  id: '',
  label: '',
  unit,
  range: null,
  bad: 'neither',
  fallback: null,
  ...(difference === undefined ? {} : { difference }),
});

/** `charge 2` is the second of the results called `charge`. */
function specOf(sheet: Sheet, name: string): ResultSpec | null {
  const whole = Object.hasOwn(sheet.results, name) ? sheet.results[name] : undefined;
  if (whole !== undefined) return whole;
  const base = Object.keys(sheet.results).find((of) => name.startsWith(`${of} `));
  return base === undefined ? null : (sheet.results[base] ?? null);
}
