import { describe, expect, it } from 'vitest';
import { componentsAlong } from '../../../../shared-lib/parts/find-component.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { fitsPart, sheetShelves, usualPlace } from '../../../../shared-lib/readings/sheet-places.ts';
import { fieldUnit, withFieldUnit } from '../../../../shared-lib/readings/shop-unit.ts';
import { resultParts, sayLimit } from '../../../../shared-lib/report/reading-words.ts';
import { computeSheet } from '../../../../shared-lib/sheets/compute.ts';
import { sheetOf, sheets } from '../../../../shared-lib/sheets/index.ts';
import type { InputSpec, Sheet } from '../../../../shared-lib/sheets/sheet-kind.ts';
import { loaderLayout } from '../../../support/loader-layout.ts';

const pressure: InputSpec = { kind: 'number', label: 'Cap', unit: 'kPa', possible: [0, 500] };
const table: InputSpec = {
  kind: 'rows',
  label: 'Heights',
  row: 'line',
  column: 'place',
  unit: 'mm',
  possible: [-5, 5],
};

describe('a field in the shop’s units', () => {
  it('reads a bare number in the unit that stands beside it', () => {
    expect(fieldUnit(pressure, 'us')).toBe('psi');
    expect(withFieldUnit('15', pressure, 'us')).toBe('15 psi');
    expect(withFieldUnit('1.2 bar', pressure, 'us')).toBe('1.2 bar');
    expect(withFieldUnit('15', pressure, 'metric')).toBe('15');
  });

  it('does so for every row of a table', () => {
    expect(withFieldUnit('.001/.002\n.003/.004', table, 'us')).toBe('.001/.002 in\n.003/.004 in');
    expect(withFieldUnit('.001/.002; .003/.004', table, 'us')).toBe('.001/.002 in; .003/.004 in');
  });

  it('gives the same result as the number converted by hand: 15 psi are 103.42 kPa (NIST SP 811)', () => {
    const sheet = sheetOf('pressure cap');
    if (sheet === null) throw new Error('no such sheet');
    const opens = (text: string) =>
      computeSheet(sheet, { inputs: { rating: '90 kPa', opens: text } }).results.find(({ of }) => of === 'opens')
        ?.value;
    const spec = sheet.inputs.opens;
    if (spec === undefined) throw new Error('no such field');
    expect(opens(withFieldUnit('15', spec, 'us'))).toBeCloseTo(103.421, 2);
  });
});

describe('a result in the shop’s units', () => {
  it('converts a difference of temperature without the offset: 15 °C apart are 27 °F', () => {
    const limit = { min: '15 °C', source: 'common-practice' as const };
    const kind = { isComputed: true, isDifference: true };
    expect(sayLimit({ limit }, 'us', kind)).toBe('at least 27\u202f°F');
    expect(resultParts('12.8 °C', '2 °C', 'us', kind)).toMatchObject({ number: '23.0', unit: '°F', off: '3.6' });
  });

  it('converts a temperature with it, and what it can be off by without: 100 ± 2 °C are 212 ± 3.6 °F', () => {
    const kind = { isComputed: true, isDifference: false };
    expect(resultParts('100 °C', '2 °C', 'us', kind)).toMatchObject({ number: '212', off: '3.6' });
  });

  it('shows a computed number to the digit that is unsure, a typed one never finer than it was written', () => {
    expect(resultParts('0.1 mm', '0.02 mm', 'metric', { isComputed: true, isDifference: false })?.number).toBe('0.10');
    expect(resultParts('0.1 mm', '0.02 mm', 'metric')?.number).toBe('0.1');
    expect(resultParts('18.3346 °', '1 °', 'metric', { isComputed: true, isDifference: false })?.number).toBe('18.3');
  });
});

const named = (name: string): Sheet => {
  const sheet = sheetOf(name);
  if (sheet === null) throw new Error(`no sheet ${name}`);
  return sheet;
};

describe('where sheets lie', () => {
  it('has each sheet on one shelf, taken at parts that there are', () => {
    const shelved = sheetShelves('', null).flatMap((shelf) => shelf.sheets.map(({ id }) => id));
    expect(shelved.toSorted()).toEqual(sheets.map(({ id }) => id).toSorted());
    for (const { takenAt } of sheets) {
      for (const part of takenAt)
        expect(componentsAlong(parseLocation(part).path).at(-1)?.code).toBe(part.split('/').at(-1));
    }
  });

  it('puts those that fit the part first', () => {
    const [first] = sheetShelves('', 'ELEC/GND.1');
    expect(first?.group).toBe('For this part');
    expect(first?.sheets.map(({ name }) => name)).toContain('Voltage drop of a cable');
    expect(fitsPart(named('bore'), 'ELEC/GND.1')).toBe(false);
  });

  it('finds a sheet by its name before it finds others by a field', () => {
    expect(sheetShelves('coolant', null)[0]?.sheets[0]?.name).toBe('Coolant');
    expect(sheetShelves('glycol', null)[0]?.sheets.map(({ name }) => name)).toContain('Margin to boiling');
    expect(sheetShelves('horoscope', null)).toEqual([]);
  });

  it('proposes only parts that the machine has', () => {
    expect(usualPlace(named('bore'), loaderLayout)).toBe('ENG/LNR');
    const parent = { ...loaderLayout, engine: { ...loaderLayout.engine, liner: 'parent' as const } };
    expect(usualPlace(named('bore'), parent)).toBe('ENG/BLK/BORE');
    expect(usualPlace(named('crack growth'), loaderLayout)).toBeNull();
  });
});
