import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CellSpec,
  cellsOf,
  pastedCells,
  textOfCells,
  withBlock,
  withCell,
} from '../../../../shared-lib/readings/cells.ts';
import { readField } from '../../../../shared-lib/sheets/read-fields.ts';

const ranged = { label: 'Readings', unit: 'kPa', possible: [-1e9, 1e9] as const };
const list: CellSpec = { kind: 'list', ...ranged };
const perCylinder: CellSpec = { kind: 'per-cylinder', ...ranged };
const rows: CellSpec = { kind: 'rows', row: 'line', column: 'place', ...ranged };

describe('cells of a field', () => {
  it('are the numbers of a list however it was typed', () => {
    for (const text of ['445/440/430', '445 / 440 / 430', '445 440 430', '445\t440\t430', '445\n440\n430']) {
      expect(cellsOf(text, list)).toEqual([['445', '440', '430']]);
    }
    expect(cellsOf('7/16 in', list)).toEqual([['7/16 in']]);
    expect(cellsOf('31/30/31 kPa', perCylinder)).toEqual([['31', '30', '31 kPa']]);
    expect(cellsOf('', rows)).toEqual([]);
  });

  it('keep a cylinder without a reading at its place, and the list is not counted then', () => {
    const typed = textOfCells([['445', '', '430', '']], perCylinder);
    expect(typed).toBe('445 / \u2013 / 430');
    expect(cellsOf(typed, perCylinder)).toEqual([['445', '', '430']]);
    expect(readField('compression', perCylinder, typed)).toMatchObject({
      value: null,
      problems: [{ weight: 'not understood' }],
    });
  });

  it('keep what is no number in its cell, and the readings after it at their cylinders', () => {
    for (const word of ['abc', 'about 24', '?', '~ 24', '24x', '\u22123', 'no reading']) {
      const typed = textOfCells([['24', word, '3', '23,8']], perCylinder);
      expect(cellsOf(typed, perCylinder)).toEqual([['24', word, '3', '23,8']]);
      expect(cellsOf(textOfCells([[word, '24']], perCylinder), perCylinder)).toEqual([[word, '24']]);
    }
    expect(cellsOf('12 L/min / 14 L/min', { ...perCylinder, unit: 'L/min' })).toEqual([['12 L/min', '14 L/min']]);
  });

  it('close up in a list, which has no places', () => {
    expect(textOfCells([['445', '', '430']], list)).toBe('445/430');
  });

  it('come back from their text as they were, numbers with signs, units and ± among them', () => {
    const number = fc.oneof(
      fc.integer({ min: -5000, max: 5000 }).map(String),
      fc.double({ min: -99, max: 99, noNaN: true }).map((value) => value.toFixed(2)),
      fc.constantFrom('.0035 in', '7/16 in', '15 psi', '14 ± 1 kPa', '-0,05', '1.2 bar'),
    );
    const table = fc.array(
      fc.array(fc.oneof({ weight: 5, arbitrary: number }, fc.constant('')), { minLength: 1, maxLength: 6 }),
      {
        minLength: 1,
        maxLength: 5,
      },
    );
    fc.assert(
      fc.property(table, (cells) => {
        const ended = cells.map((row) => [...row.slice(0, -1), '1']);
        expect(cellsOf(textOfCells(ended, rows), rows)).toEqual(ended);
      }),
    );
  });

  it('take a block of a spreadsheet from the cell in hand on', () => {
    const block = pastedCells('6050\t18.3\r\n6260\t23.5\r\n', rows);
    expect(block).toEqual([
      ['6050', '18.3'],
      ['6260', '23.5'],
    ]);
    expect(textOfCells(withBlock([['5900', '17']], 1, 0, block ?? []), rows)).toBe('5900/17\n6050/18.3\n6260/23.5');
    expect(pastedCells('445\t\t430', perCylinder)).toEqual([['445', '', '430']]);
    expect(pastedCells('445\n440\n430\n', list)).toEqual([['445', '440', '430']]);
    expect(pastedCells('445', list)).toBeNull();
  });

  it('change one by one', () => {
    expect(withCell([['445']], 0, 2, '430')).toEqual([['445', '', '430']]);
  });
});
