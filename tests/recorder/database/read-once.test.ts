import { describe, expect, it } from 'vitest';
import { readOnce } from '../../../electron/recorder/database/read-once.ts';

interface Row {
  readonly id: string;
  readonly points: string;
  readonly note: string | null;
}

const open = (most = 10) => {
  const readings: string[] = [];
  const read = readOnce(most, ({ id, points, note }: Row) => {
    readings.push(id);
    return { points: JSON.parse(points) as unknown, note };
  });
  return { read, readings };
};

describe('a row that is read once', () => {
  it('gives the same object for as long as it says the same', () => {
    const { read, readings } = open();
    const first = read({ id: 'a', points: '[1]', note: null });
    expect(read({ id: 'a', points: '[1]', note: null })).toBe(first);
    expect(readings).toEqual(['a']);
  });

  it('is read anew when any column says something else, and when it says the old thing again', () => {
    const { read } = open();
    const says = (points: string, note: string | null) => read({ id: 'a', points, note });
    expect(says('[1]', null)).toEqual({ points: [1], note: null });
    expect(says('[2]', null)).toEqual({ points: [2], note: null });
    expect(says('[2]', '')).toEqual({ points: [2], note: '' });
    expect(says('[1]', null)).toEqual({ points: [1], note: null });
  });

  it('is never taken for another row, and what was read longest ago goes first', () => {
    const { read, readings } = open(2);
    for (const id of ['a', 'b', 'a', 'c']) read({ id, points: `["${id}"]`, note: null });
    expect(read({ id: 'a', points: '["a"]', note: null })).toEqual({ points: ['a'], note: null });
    expect(read({ id: 'b', points: '["b"]', note: null })).toEqual({ points: ['b'], note: null });
    expect(readings).toEqual(['a', 'b', 'c', 'b']);
  });
});
