import { describe, expect, it } from 'vitest';
import type { Tables } from '../../../../../electron/recorder/database/tables.ts';
import { chainStart, entryDigest, firstBreak } from '../../../../../electron/recorder/journal/chain.ts';
import {
  canonical,
  difference,
  type RowChange,
  reversed,
  sha256,
} from '../../../../../electron/recorder/journal/change.ts';
import { foldUndo } from '../../../../../electron/recorder/journal/undo.ts';

type Entry = Tables['journal'];

const bare = (seq: number, differs: Partial<Entry> = {}): Omit<Entry, 'digest' | 'previous_digest'> => ({
  seq,
  step_id: `step ${seq}`,
  at_ms: 1000 * seq,
  zone_offset_min: 60,
  person_id: null,
  window_id: 'window',
  visit_id: 'visit',
  machine_id: null,
  operation: 'finding.add',
  undoable: 1,
  reverses: null,
  changes: `[{"id":"${seq}"}]`,
  ...differs,
});

/** Each entry carries the digest of the one before, as whoever writes a journal can always make it. */
function chained(entries: readonly Omit<Entry, 'digest' | 'previous_digest'>[]): Entry[] {
  const chain: Entry[] = [];
  for (const entry of entries) {
    const whole = { ...entry, previous_digest: chain.at(-1)?.digest ?? chainStart };
    chain.push({ ...whole, digest: entryDigest(whole) });
  }
  return chain;
}

describe('the chain of a journal', () => {
  const four = chained([1, 2, 3, 4].map((seq) => bare(seq)));

  it('holds from the first entry to the last, and empty', () => {
    expect(firstBreak(four)).toBeNull();
    expect(firstBreak([])).toBeNull();
  });

  it('breaks at an entry that was changed in any of its columns', () => {
    for (const column of Object.keys(bare(1)) as (keyof Entry)[]) {
      if (column === 'seq') continue;
      const forged = four.map((entry) => (entry.seq === 3 ? { ...entry, [column]: 'something else' } : entry));
      expect(firstBreak(forged), column).toBe(3);
    }
  });

  it('breaks after a changed entry whose own digest was made anew', () => {
    const forged = four.map((entry) => {
      if (entry.seq !== 2) return entry;
      const { digest: _, ...rest } = { ...entry, changes: '[]' };
      return { ...rest, digest: entryDigest(rest) };
    });
    expect(firstBreak(forged)).toBe(3);
  });

  it('breaks where an entry is missing, at either end of the gap, and where two changed places', () => {
    expect(firstBreak(four.slice(1))).toBe(2);
    expect(firstBreak(four.filter(({ seq }) => seq !== 3))).toBe(4);
    expect(firstBreak([four[0], four[2], four[1], four[3]] as Entry[])).toBe(3);
  });

  it('breaks where an entry was taken out and all that follow were chained anew: the numbers tell', () => {
    expect(firstBreak(chained([bare(1), bare(3), bare(4)]))).toBe(3);
  });
});

describe('what an entry is digested from', () => {
  // RFC 8785, 3.2.3: properties in the order of their names; FIPS 180-4's example: SHA-256 of "abc".
  it('is in one order, whatever order it was written in', () => {
    expect(canonical({ b: 1, a: [true, null, 'ä'] })).toBe('{"a":[true,null,"ä"],"b":1}');
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(() => canonical(undefined)).toThrow('no canonical form');
  });
});

describe('a change', () => {
  it('is what differs, and nothing where nothing was named', () => {
    const before = { words: 'first', urgency: 2, place: null };
    expect(difference(before, { words: 'second', urgency: 2, place: undefined })).toEqual({
      words: ['first', 'second'],
    });
    expect(difference(before, { place: 'ENG', fresh: null })).toEqual({ place: [null, 'ENG'] });
    expect(difference(before, {})).toEqual({});
  });

  it.each<RowChange>([
    { table: 'finding', id: 'f', added: { id: 'f', words: 'x' } },
    { table: 'finding', id: 'f', removed: { id: 'f', words: 'x' } },
    { table: 'finding', id: 'f', updated: { words: ['x', 'y'], urgency: [null, 3] } },
  ])('reversed twice is the change itself, and once is not: %j', (change) => {
    expect(reversed(reversed(change))).toEqual(change);
    expect(reversed(change)).not.toEqual(change);
  });

  it('of a personal row cannot be taken back from the journal', () => {
    const personal: RowChange = { table: 'owner', id: 'o', personal: { before: null, after: 'digest' } };
    expect(() => reversed(personal)).toThrow('personal');
  });
});

describe('what can be taken back and done again', () => {
  const entry = (step_id: string, operation: string, reverses: string | null = null) => ({
    step_id,
    operation,
    reverses,
  });
  const add = entry('1', 'finding.add');
  const change = entry('2', 'finding.change');

  it('is the last step first', () => {
    expect(foldUndo([add, change]).undo.map(({ operation }) => operation)).toEqual(['finding.add', 'finding.change']);
    expect(foldUndo([add, change]).redo).toEqual([]);
  });

  it('a step of many entries counts once', () => {
    expect(foldUndo([add, add, add]).undo).toHaveLength(1);
    const back = entry('u', 'undo.undo', '1');
    expect(foldUndo([add, add, back, back])).toEqual({ undo: [], redo: [{ stepId: 'u', operation: 'finding.add' }] });
  });

  it('is known by what was done, however often it went to and fro', () => {
    const to = [add, change, entry('u1', 'undo.undo', '2')];
    expect(foldUndo(to)).toMatchObject({
      undo: [{ operation: 'finding.add' }],
      redo: [{ operation: 'finding.change' }],
    });
    const fro = [...to, entry('r1', 'undo.redo', 'u1')];
    expect(foldUndo(fro).undo.at(-1)).toEqual({ stepId: 'r1', operation: 'finding.change' });
    const again = [...fro, entry('u2', 'undo.undo', 'r1')];
    expect(foldUndo(again).redo).toEqual([{ stepId: 'u2', operation: 'finding.change' }]);
  });

  it('is gone to be done again once something new was done', () => {
    expect(foldUndo([add, entry('u', 'undo.undo', '1'), change])).toEqual({
      undo: [{ stepId: '2', operation: 'finding.change' }],
      redo: [],
    });
  });

  it('is not touched by what reverses neither top', () => {
    expect(foldUndo([add, change, entry('u', 'undo.undo', '1')]).undo).toHaveLength(2);
  });
});
