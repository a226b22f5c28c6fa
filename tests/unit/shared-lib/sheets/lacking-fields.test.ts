import { describe, expect, it } from 'vitest';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import { sheetOf } from '../../../../shared-lib/sheets/index.ts';
import type { SheetInput } from '../../../../shared-lib/sheets/outcome.ts';
import { linesByHand } from '../../../reference/shared-lib/sheets/lines-by-hand/index.ts';
import { workedExamples } from '../../../reference/shared-lib/sheets/worked-examples.ts';

/** A field that nobody filled must never be taken for nothing: the line that needs it then has no number at all. */
type Fields = Readonly<Record<string, string>>;

const examples: ReadonlyMap<string, { readonly inputs: Fields; readonly conditions: Fields }> = (() => {
  const bySheet = new Map<string, { inputs: Fields; conditions: Fields }>();
  const all: readonly { sheet: string; input: SheetInput }[] = [...workedExamples, ...linesByHand];
  for (const { sheet, input } of all) {
    const { inputs, conditions } = bySheet.get(sheet) ?? { inputs: {}, conditions: {} };
    bySheet.set(sheet, {
      inputs: { ...input.inputs, ...inputs },
      conditions: { ...input.conditions, ...conditions },
    });
  }
  return bySheet;
})();

/** What a line asks for and can do without: a cap is recorded before it is judged, a rod pushed in leaves the whole bore. */
const canDoWithout: Readonly<Record<string, string>> = {
  'MS-06 opens': 'rating',
  'MS-06 holds': 'rating',
  'MS-20 area': 'rod',
  'MS-20 volume': 'rod',
  'MS-20 flow': 'rod',
  'MS-20 flow, all': 'rod',
};

/** Every field of the sheet's examples, each left out and each left alone with one other. */
function partsOf(whole: Fields): Fields[] {
  const ids = Object.keys(whole);
  const only = (keep: (id: string) => boolean): Fields =>
    Object.fromEntries(Object.entries(whole).filter(([id]) => keep(id)));
  return [
    ...ids.map((left) => only((id) => id !== left)),
    ...ids.map((one) => only((id) => id === one)),
    ...ids.flatMap((one) => ids.map((other) => only((id) => id === one || id === other))),
  ];
}

describe.each([...examples])('%s', (sheet, { inputs, conditions }) => {
  const results = sheetOf(sheet)?.results ?? {};
  const specOf = (of: string) => results[of] ?? results[of.replace(/ [^ ]+$/, '')];

  it('gives a line its number only where every field that it needs was filled', () => {
    let computed = 0;
    for (const given of [{}, conditions]) {
      for (const part of partsOf(inputs)) {
        for (const line of compute(sheet, { inputs: part, conditions: given }).results) {
          if (line.value === null && line.seen === null) continue;
          computed += 1;
          const filled = (id: string) => Object.hasOwn(part, id) || Object.hasOwn(given, id);
          const lacks = (specOf(line.of)?.needs ?? []).filter(
            (need) => ![need].flat().some(filled) && need !== canDoWithout[`${sheet} ${line.of}`],
          );
          expect(lacks, `${line.of} = ${line.value} by ${JSON.stringify(part)}`).toEqual([]);
        }
      }
    }
    expect(computed).toBeGreaterThan(0);
  });
});
