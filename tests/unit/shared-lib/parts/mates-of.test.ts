import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLocation } from '../../../../shared-lib/parts/check-location.ts';
import { matesOf } from '../../../../shared-lib/parts/mates-of.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { speakLocation } from '../../../../shared-lib/parts/speak-location.ts';
import { anyPlace } from './arbitrary-places.ts';
import { layoutOf } from './scenario-places.ts';

const parentBore = layoutOf('s1');
const dryLiner = layoutOf('s2');
const wetLiner = layoutOf('s5');
const unknownLiner = layoutOf('s6');
const headEach = { ...parentBore, engine: { ...parentBore.engine, heads: 4 } };

// Source: the handbook's 2.3 b and c. Pairs marked * are common practice, no source.
describe('look at the mate', () => {
  it.each([
    ['deck, gasket and fire face', 'ENG/BLK/DECK.1@clk=2', parentBore, ['ENG/HG.1@clk=2', 'ENG/HD.1/FIRE@clk=2']],
    ['deck, gasket and fire face', 'ENG/HD.1/FIRE@clk=10', parentBore, ['ENG/HG.1@clk=10', 'ENG/BLK/DECK.1@clk=10']],
    ['liner and jacket', 'ENG/LNR.4@side=THR;face=OUT;z=90-160', wetLiner, ['ENG/BLK/WJ.4@side=THR;z=90-160']],
    ['liner and jacket, the other way', 'ENG/BLK/WJ.4@z=90', wetLiner, ['ENG/LNR.4@face=OUT;z=90']],
    ['a dry liner and its bore *', 'ENG/LNR.4/OUT', dryLiner, ['ENG/BLK/BORE.4']],
    ['skirt and liner', 'ENG/PST.5/SKT@side=THR', dryLiner, ['ENG/LNR.5@side=THR;face=IN']],
    ['skirt and parent bore', 'ENG/PST.3/SKT@side=THR', parentBore, ['ENG/BLK/BORE.3@side=THR']],
    ['skirt and a bore of unknown make', 'ENG/PST.3/SKT', unknownLiner, ['ENG/BLK/BORE.3']],
    ['liner and skirt', 'ENG/LNR.5@side=THR;face=IN', dryLiner, ['ENG/PST.5/SKT@side=THR']],
    ['journal and shell', 'ENG/CRK/MJ.3', dryLiner, ['ENG/CRK/MBRG.3']],
    ['crankpin and shell', 'ENG/CRK/CP.5', dryLiner, ['ENG/ROD.5/RBRG']],
    ['seat and valve *', 'ENG/HD.1/EVS.3.1', parentBore, ['ENG/HD.1/EV.3.1']],
    [
      'the steering cylinder stays the steering cylinder *',
      'STEER/CYL.steer.L/BAR',
      unknownLiner,
      ['STEER/CYL.steer.L/PIS'],
    ],
    ['disc and lining *', 'BRK/DISC.L', layoutOf('s7'), ['BRK/LINING.L']],
  ])('%s', (_, place, layout, mates) => {
    const found = matesOf(place, layout).map((mate) => mate.location);
    expect(found).toEqual(expect.arrayContaining(mates));
  });

  it.each([
    ['the exhaust seat', 'ENG/HD.1/EVS.3.1@to=INJB.3', parentBore, ['ENG/HD.1/EVS.2.1', 'ENG/HD.1/EVS.4.1']],
    ['the last liner', 'ENG/LNR.6@side=THR;face=OUT', wetLiner, ['ENG/LNR.5@face=OUT']],
    ['the first bore', 'ENG/BLK/BORE.1', parentBore, ['ENG/BLK/BORE.2']],
  ])('neighbours share the gasket web: %s', (_, place, layout, neighbours) => {
    const web = matesOf(place, layout).filter((mate) => mate.why.includes('gasket web'));
    expect(web.map((mate) => mate.location)).toEqual(neighbours);
  });

  it('has no shared web between heads of their own', () => {
    expect(matesOf('ENG/HD.3/EVS.3.1', headEach).map((mate) => mate.location)).toEqual(['ENG/HD.3/EV.3.1']);
  });

  it("does not take a frame's pin for the piston's", () => {
    expect(matesOf('FRM/PIN.2', unknownLiner)).toEqual([]);
  });

  it('sends nobody to a place that is not there, and always says why', () => {
    fc.assert(
      fc.property(anyPlace, ({ layout, text }) => {
        for (const mate of matesOf(text, layout)) {
          expect(() => checkLocation(parseLocation(mate.location), layout)).not.toThrow();
          expect(speakLocation(mate.location, layout)).not.toBe('');
          expect(mate.why).toMatch(/^[a-z]/);
        }
      }),
      { numRuns: 200 },
    );
  });
});
