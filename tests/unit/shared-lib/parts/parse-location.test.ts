import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AppError } from '../../../../shared-lib/contract/errors.ts';
import { formatLocation } from '../../../../shared-lib/parts/format-location.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { anyLocation } from './arbitrary-places.ts';
import { scenarioPlaces } from './scenario-places.ts';

function refusalOf(text: string): AppError | null {
  try {
    parseLocation(text);
    return null;
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
}

// Source: the grammar and the examples of the handbook's 2.3.
describe('a place of the grammar', () => {
  it('is read into parts, numbers and typed qualifiers', () => {
    expect(parseLocation('ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3')).toEqual({
      path: [
        { code: 'ENG', indices: [] },
        { code: 'HD', indices: [1] },
        { code: 'EVS', indices: [3, 1] },
      ],
      qualifiers: { from: [{ code: 'EVS', indices: [3, 1] }], to: [{ code: 'INJB', indices: [3] }] },
    });
  });

  it.each([
    ['ENG/BLK/DECK.1@btw=WJ.2,BOLT.5;clk=2', { clock: { fromHour: 2, toHour: 2 } }],
    ['ENG/LNR.4@side=THR;face=OUT;z=90-160', { side: 'THR', face: 'OUT', depth: { fromMm: 90, toMm: 160 } }],
    ['HYD/CYL.boom.L/RODH@clk=6;z=210', { depth: { fromMm: 210, toMm: 210 } }],
    ['HYD/HOSE.steer.L@end=A;z=340', { end: 'A' }],
    ['FRM/LOADERTWR.R@near=PIN.2:30', { near: { part: [{ code: 'PIN', indices: [2] }], mm: 30 } }],
    ['ENG/LNR.4@clk=10.5-1', { clock: { fromHour: 10.5, toHour: 1 } }],
  ])('%s', (text, qualifiers) => {
    expect(parseLocation(text).qualifiers).toMatchObject(qualifiers);
  });

  it.each([...scenarioPlaces])('keeps its text in case %s: %s', (_, text) => {
    expect(formatLocation(parseLocation(text))).toBe(text);
  });

  it('is written in one order however it was typed', () => {
    expect(formatLocation(parseLocation(' HYD/HOSE.boom.L@z=340-340;end=A '))).toBe('HYD/HOSE.boom.L@end=A;z=340');
  });

  it('survives writing and reading, whatever it says', () => {
    fc.assert(
      fc.property(anyLocation, (location) => {
        fc.pre(formatLocation(location).length <= 300);
        expect(parseLocation(formatLocation(location))).toEqual(location);
      }),
    );
  });
});

describe('what is no place', () => {
  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['eng', 'not the code of a part'],
    ['ENG//HD', 'missing between two strokes'],
    ['ENG/HD.', 'missing after the point'],
    ['ENG/HD.XX', 'neither a number'],
    ['ENG/HD.1.5x', 'neither a number'],
    ['@clk=2', 'no part is named'],
    ['ENG@clk=2@z=3', 'twice'],
    ['ENG@clk=2;clk=3', 'twice'],
    ['ENG@clk', 'where on the part'],
    ['ENG@clk=', 'where on the part'],
    ['ENG@', 'where on the part'],
    ['ENG@foo=2', 'where on a part'],
    ['ENG@clk=2.3', 'not a clock position'],
    ['ENG@clk=two', 'not a clock position'],
    ['ENG@clk=1-2-3', 'not a clock position'],
    ['ENG@z=-5', 'not a distance'],
    ['ENG@z=160-90', 'backwards'],
    ['ENG@side=LEFT', 'no side'],
    ['ENG@zone=TOP', 'no zone'],
    ['ENG@end=C', 'no end'],
    ['ENG@btw=WJ.2', 'exactly two parts'],
    ['ENG@near=PIN.2:x', 'how many millimetres'],
    [`ENG@from=${'A'.repeat(400)}`, 'too long'],
  ])('%s is refused: %s', (text, reason) => {
    const refusal = refusalOf(text);
    expect(refusal?.code).toBe('location-malformed');
    expect(refusal?.details.text).toBe(text);
    expect(refusal?.details.reason).toContain(reason);
  });

  it('is never anything but a place or a refusal, whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[A-Z0-9./@=;,:\-a-z]{0,40}$/)), (text) => {
        const refusal = refusalOf(text);
        if (refusal === null) expect(parseLocation(formatLocation(parseLocation(text)))).toEqual(parseLocation(text));
        else expect(refusal.code).toBe('location-malformed');
      }),
    );
  });
});
