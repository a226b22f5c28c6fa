import { expect, test } from 'vitest';
import { printableText } from '../../../../shared-lib/report/printable-text.ts';

const ordinary = Array.from({ length: 0x7e - 0x20 + 1 }, (_, index) => String.fromCodePoint(0x20 + index));

// A letter from outside sends the whole text through every check, so both ways are asked for the same signs.
test.each(ordinary)('%j stands as it is, alone and beside a letter that has to be looked up', (sign) => {
  expect(printableText(sign)).toBe(sign);
  expect(printableText(`${sign}é`)).toBe(`${sign}é`);
});

test('a long word of plain letters is still made partable', () => {
  expect(printableText('a'.repeat(26))).toBe('a'.repeat(26));
  expect(printableText('a'.repeat(27))).toBe(`${'a'.repeat(8)}\u200b${'a'.repeat(8)}\u200b${'a'.repeat(8)}\u200baaa`);
  expect(printableText(`${'a'.repeat(20)}\n${'a'.repeat(20)}`)).not.toContain('\u200b');
});
