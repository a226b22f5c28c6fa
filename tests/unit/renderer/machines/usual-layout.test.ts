import { describe, expect, it } from 'vitest';
import { sketchBores } from '../../../../renderer/machines/engine-sketch.ts';
import {
  readBank,
  readFunctionWords,
  usualLayout,
  withEngine,
  withPart,
} from '../../../../renderer/machines/usual-layout.ts';
import { Layout } from '../../../../shared-lib/model/layout.ts';

describe('a layout as it is put together at intake', () => {
  it('is one that the record takes, from the first answer on', () => {
    expect(Layout.safeParse(usualLayout).success).toBe(true);
    const changed = withPart(
      withEngine(usualLayout, { liner: 'wet', linerStop: 'top-flange', cylinders: 1, heads: 4 }),
      'PROT/ROPS',
      true,
    );
    expect(Layout.safeParse(changed).success).toBe(true);
    expect(changed.engine.heads).toBe(1);
    expect(changed.has).toEqual(['PROT/ROPS']);
  });

  it('forgets where a wet liner seats when the liner is not wet', () => {
    const wet = withEngine(usualLayout, { liner: 'wet', linerStop: 'mid-stop' });
    expect(withEngine(wet, { fuel: 'gas' }).engine.linerStop).toBe('mid-stop');
    expect(withEngine(wet, { liner: 'dry' }).engine).not.toHaveProperty('linerStop');
  });

  it('forgets a list of numbers that no longer fits the engine', () => {
    const listed = {
      ...withEngine(usualLayout, { cylinders: 2 }),
      numbering: { scheme: 'list' as const, list: readBank('2 1', 2) ?? [] },
    };
    expect(withEngine(listed, { fuel: 'gas' }).numbering.list).toHaveLength(2);
    expect(withEngine(listed, { cylinders: 3 }).numbering).toEqual({ scheme: 'list' });
  });

  it.each([
    ['Boom, bucket', ['boom', 'bucket']],
    ['blade/blade', ['blade']],
    ['  ', []],
    ['jack 2', ['jack']],
  ])('reads the words of the hydraulics from "%s"', (typed, words) => {
    expect(readFunctionWords(typed)).toEqual(words);
  });

  it.each([
    ['1 3 5', 3, [1, 3, 5]],
    ['1,3,5', 3, [1, 3, 5]],
    ['1 3', 3, null],
    ['1 1 2', 3, null],
    ['0 1 2', 3, null],
  ])("reads the maker's numbers of a bank: %s", (typed, count, numbers) => {
    expect(readBank(typed, count)?.map(({ number }) => number) ?? null).toEqual(numbers);
  });
});

describe('the engine as it is sketched, fan at the left', () => {
  const numbers = (layout: typeof usualLayout) => sketchBores(layout).bores.map(({ number }) => number);

  it('counts from the end that was chosen', () => {
    expect(numbers(usualLayout)).toEqual([1, 2, 3, 4]);
    expect(numbers({ ...usualLayout, numbering: { scheme: 'drive-first' } })).toEqual([4, 3, 2, 1]);
  });

  it('claims no number that nobody has said', () => {
    expect(numbers({ ...usualLayout, numbering: { scheme: 'list' } })).toEqual([null, null, null, null]);
    expect(numbers(withEngine(usualLayout, { arrangement: 'V' }))).toEqual([null, null, null, null]);
  });

  it("puts the maker's numbers on their banks", () => {
    const list = [...(readBank('1 3', 2, 'R') ?? []), ...(readBank('2 4', 2, 'L') ?? [])];
    const layout = { ...withEngine(usualLayout, { arrangement: 'V' }), numbering: { scheme: 'list' as const, list } };
    expect(sketchBores(layout).bores).toEqual([
      { row: 0, column: 0, number: 1 },
      { row: 1, column: 0, number: 2 },
      { row: 0, column: 1, number: 3 },
      { row: 1, column: 1, number: 4 },
    ]);
  });
});
