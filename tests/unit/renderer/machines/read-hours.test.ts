import { describe, expect, it } from 'vitest';
import { readHours } from '../../../../renderer/machines/read-hours.ts';

describe('the hour meter as people write it', () => {
  it.each([
    ['6260', 6260],
    ['6 260 h', 6260],
    ['6\u202f260\u202fh', 6260],
    ['6,260', 6260],
    ['6.260', 6260],
    ['6260.4', 6260.4],
    ['6260,4 hrs', 6260.4],
    ['18,600,250', undefined],
    ["12'345", 12_345],
    ['0', 0],
  ])('%s', (typed, hours) => {
    const read = readHours(typed);
    if (hours === undefined) expect(read.kind).toBe('unclear');
    else expect(read).toEqual({ kind: 'hours', hours });
  });

  it.each(['4 2,5,0', '-5', '12 or 13', 'broken', '6.2.6', '900000', '1e5'])('"%s" is asked about', (typed) => {
    expect(readHours(typed).kind).toBe('unclear');
  });

  it.each(['', '  ', 'h'])('"%s" is nothing yet', (typed) => {
    expect(readHours(typed)).toEqual({ kind: 'blank' });
  });
});
