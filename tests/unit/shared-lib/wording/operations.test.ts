import { describe, expect, it } from 'vitest';
import { namesThatChange, operationWords } from '../../../../shared-lib/wording/operations.ts';

describe('what was done has a name', () => {
  it('knows operations at all', () => {
    expect(namesThatChange).toContain('finding.add');
    expect(namesThatChange).not.toContain('visit.get');
  });

  it.each(namesThatChange)('%s', (name) => {
    const words = operationWords(name);
    expect(words).not.toBe(operationWords('something of another version'));
    expect(words).toMatch(/^[a-z][^.]*$/);
  });

  it('two operations never share a name', () => {
    const words = namesThatChange.map(operationWords);
    expect(new Set(words).size).toBe(words.length);
  });
});
