import { expect, it } from 'vitest';
import { orphanWords } from '../../../../renderer/machines/orphan-words.ts';
import { usualLayout } from '../../../../renderer/machines/usual-layout.ts';

it('places that would be lost are said in words, each once', () => {
  const error = { code: 'layout-orphans' as const, details: { places: ['ENG/LNR.4', 'ENG/LNR.4', 'ENG/LNR.3'] } };
  const words = orphanWords(error, usualLayout);
  expect(words).toHaveLength(2);
  expect(words.join()).not.toMatch(/ENG|LNR|[@/]/);
  expect(words[0]).toContain('4');
});

it('has nothing to say of another refusal', () => {
  expect(orphanWords({ code: 'internal', details: {} }, usualLayout)).toEqual([]);
});
