import { describe, expect, it } from 'vitest';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import { sheets } from '../../../../shared-lib/sheets/index.ts';
import { linesByHand } from './lines-by-hand/index.ts';
import { workedExamples } from './worked-examples.ts';

describe.each(linesByHand)('$sheet: $title', ({ sheet, input, of, ...wanted }) => {
  it(of, () => {
    const outcome = compute(sheet, input);
    expect(outcome.problems.filter(({ weight }) => weight !== 'odd')).toEqual([]);
    const line = outcome.results.find((each) => each.of === of);
    const { value, within = 1e-9, beside, uncertainty, limit, verdict } = wanted;
    if (value !== undefined) expectNear(line?.value, value, within);
    if (beside !== undefined) expectNear(line?.crossCheck?.value, beside, Math.max(within, 1e-5));
    if (uncertainty !== undefined) expectNear(line?.uncertainty, uncertainty, 1e-5);
    if (limit === null) expect(line?.limit).toBeNull();
    for (const [edge, at] of Object.entries(limit ?? {})) {
      expectNear(line?.limit?.[edge as 'min' | 'max' | 'badAbove'], at, 1e-9);
    }
    if (verdict !== undefined) expect(line?.verdict).toBe(verdict);
  });
});

it('no sheet has a line that neither these nor the handbook’s examples work out', () => {
  const worked = new Set([
    ...workedExamples.flatMap(({ sheet, wanted }) =>
      wanted.flatMap(({ of, value, handbook, verdict }) =>
        value !== undefined || handbook !== undefined || verdict !== undefined ? [`${sheet} ${of}`] : [],
      ),
    ),
    ...linesByHand.map(({ sheet, of }) => `${sheet} ${of}`),
  ]);
  const lines = sheets.flatMap(({ id, results }) => Object.keys(results).map((of) => `${id} ${of}`));
  expect(lines.filter((line) => !worked.has(line))).toEqual([]);
});

function expectNear(
  actual: number | readonly number[] | null | undefined,
  wanted: number | readonly number[],
  within: number,
) {
  const found = [actual ?? []].flat();
  const want = [wanted].flat();
  expect(found).toHaveLength(want.length);
  for (const [index, number] of want.entries()) {
    expect(Math.abs((found[index] ?? Number.NaN) - number)).toBeLessThanOrEqual(within * Math.max(1, Math.abs(number)));
  }
}
