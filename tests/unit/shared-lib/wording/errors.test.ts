import { describe, expect, it } from 'vitest';
import { errorCodes } from '../../../../shared-lib/contract/errors.ts';
import { errorSentence, errorText } from '../../../../shared-lib/wording/errors.ts';

/** Codes of the handbook and of the program are never shown to people. */
const handbookCode = /\b(T[0-4]|U[0-5]|D[1-4]|CAU-\d+|MS-\d+)\b/;

describe('every refusal has a plain sentence', () => {
  it.each(errorCodes)('%s, even when its details are missing', (code) => {
    const { happened, kept } = errorSentence({ code, details: {} });
    expect(happened).toMatch(/^[A-Z"].*\.$/);
    expect(kept).toMatch(/^$|^[A-Z].*[.?]$/);
    const all = `${happened} ${kept}`;
    expect(all).not.toMatch(handbookCode);
    expect(all).not.toMatch(/undefined|null|\[object|NaN/);
    if (code.includes('-')) expect(all).not.toContain(code);
  });

  it('names the places that a new layout would orphan', () => {
    const text = errorText({ code: 'layout-orphans', details: { places: ['cylinder 5, liner', 'cylinder 6, liner'] } });
    expect(text).toContain('cylinder 5, liner; cylinder 6, liner');
    expect(text).toContain('stays as it was');
  });

  it('says both readings when the hours fall, and asks why', () => {
    const text = errorText({ code: 'hours-fall', details: { before: 6260, now: 12 } });
    expect(text).toContain('12\u202fh now, 6\u202f260\u202fh before');
    expect(text).toMatch(/changed.*misread.*another machine/);
  });

  it('names the first thing that is wrong with the input', () => {
    const details = { issues: [{ path: 'plate.kind', message: 'too short' }] };
    expect(errorText({ code: 'invalid-input', details })).toContain('(plate.kind: too short)');
  });

  it.each([
    [{ fewest: 1, most: 1 }, 'one point'],
    [{ fewest: 2, most: 2 }, '2 points'],
    [{ fewest: 3, most: 5000 }, 'at least 3 points and at most 5000'],
  ])('counts points: %j', (details, words) => {
    expect(errorText({ code: 'wrong-point-count', details })).toContain(words);
  });
});
