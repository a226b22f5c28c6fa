import fc from 'fast-check';
import { expect, test } from 'vitest';
import { waysLeft, waysToFill } from '../../../../shared-lib/sheets/ways.ts';

test('needs are told as ways, and a way begun is gone on with', () => {
  const flatness = [
    ['points', 'heights', 'feelers'],
    ['points', 'along', 'feelers'],
    ['points', 'across', 'feelers'],
  ];
  expect(waysToFill(flatness)).toEqual([['points'], ['heights', 'along', 'across'], ['feelers']]);
  expect(waysLeft(flatness, (id) => id === 'heights')).toEqual([['along', 'across']]);
});

test('a set of inputs fills the needs exactly when it holds a way, and no way has one too many', () => {
  const ids = ['a', 'b', 'c', 'd', 'e'];
  const needs = fc.array(fc.uniqueArray(fc.constantFrom(...ids), { minLength: 1, maxLength: 3 }), { maxLength: 4 });
  fc.assert(
    fc.property(needs, fc.subarray(ids), (groups, typed) => {
      const fills = (some: readonly string[]) => groups.every((group) => group.some((id) => some.includes(id)));
      const ways = waysToFill(groups);
      expect(ways.some((way) => way.every((id) => typed.includes(id)))).toBe(fills(typed));
      for (const way of ways) {
        for (const id of way) expect(fills(way.filter((other) => other !== id))).toBe(false);
      }
      expect(new Set(ways.map((way) => [...way].sort().join())).size).toBe(ways.length);
    }),
  );
});
