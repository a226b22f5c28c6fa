import { expect, it } from 'vitest';
import { asPart, asSentence, shortened } from '../../../../shared-lib/report/sentence.ts';

it.each([
  ['the braid rusts', 'The braid rusts.'],
  ['pH 6.8 (± 0.3)', 'pH 6.8 (± 0.3).'],
  ['kPa are meant', 'kPa are meant.'],
])('%s is a sentence, and a sign keeps its letters', (text, expected) => {
  expect(asSentence(text)).toBe(expected);
});

it.each([
  ['A stretched chain gives no warning.', 'a stretched chain gives no warning'],
  ['The hole goes oval.', 'the hole goes oval'],
  ['I take the tower to the welder.', 'I take the tower to the welder'],
  ['PTO shield gone', 'PTO shield gone'],
])('%s stands inside another sentence', (text, expected) => {
  expect(asPart(text)).toBe(expected);
});

it('what is too long is cut after a sentence, and says that there was more', () => {
  const advice =
    'New rod, or grind and re-chrome by the cylinder shop. Find what did it: the wiper is full of stone dust.';
  expect(shortened(advice, 90)).toBe('New rod, or grind and re-chrome by the cylinder shop. …');
});

it('where a sentence would leave too little, it is cut between words', () => {
  expect(shortened('Oil. A drop falls about every second with the mast loaded.', 40)).toBe(
    'Oil. A drop falls about every second…',
  );
});

it('spaces that hold a number and its unit together are kept', () => {
  expect(shortened('crack  15\u202fmm,\nthe\tlonger 4\u00a0mm', 90)).toBe('crack 15\u202fmm, the longer 4\u00a0mm');
});
