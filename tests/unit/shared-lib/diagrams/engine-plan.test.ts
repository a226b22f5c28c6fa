import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Diagram, diagramFor } from '../../../../shared-lib/diagrams/diagram-for.ts';
import { directionOfHour, enginePlan } from '../../../../shared-lib/diagrams/engine-plan.ts';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { cylinderPlaces } from '../../../../shared-lib/parts/cylinder-places.ts';
import { faceClock } from '../../../../shared-lib/parts/face-clock.ts';
import { plainLayout } from '../../../support/ranking/a-finding.ts';
import { anyLayout } from '../parts/arbitrary-places.ts';

const tag = { number: 1, tier: 0, state: 'confirmed' } as const;

function shown(location: string, layout: Layout): Diagram {
  const diagram = diagramFor({ findingId: 'f', tag, locations: [location] }, layout);
  if (diagram === null) throw new Error(`${location} is not drawn`);
  return diagram;
}

/** Where a place is, seen from its bore's middle. The bore's middle is found by its printed number alone. */
function fromBore(diagram: Diagram, cylinder: number): { x: number; y: number } {
  const number = diagram.primitives.find(
    (each) => each.kind === 'label' && each.weight === 'number' && each.text === String(cylinder),
  );
  if (number?.kind !== 'label') throw new Error(`no number ${cylinder}`);
  const circles = diagram.primitives.flatMap((each) =>
    each.kind === 'circle' && each.weight === 'line' ? [each.centre] : [],
  );
  const bore = circles
    .filter(({ x, y }) => Math.abs(x - number.at.x) < 1e-6 && y < number.at.y)
    .sort((a, b) => b.y - a.y)[0];
  const point = diagram.anchors[0]?.point;
  if (bore === undefined || point === undefined) throw new Error('no bore or no anchor');
  return { x: point.x - bore.x, y: point.y - bore.y };
}

const hours = Array.from({ length: 24 }, (_, index) => (index + 1) / 2);

describe('the clock', () => {
  // The handbook's 2.2: looking down on the deck, 12 is the free end, clockwise; 3 is right, 6 the drive end, 9 left.
  it.each([
    [12, -1, 0],
    [3, 0, -1],
    [6, 1, 0],
    [9, 0, 1],
  ])('%d on the deck, fan end at the left of the drawing', (hour, x, y) => {
    const way = directionOfHour(hour, false);
    expect(way.x).toBeCloseTo(x, 9);
    expect(way.y).toBeCloseTo(y, 9);
  });

  it.each(hours)('%d on the deck is drawn on the fire face where its mirrored hour stands on a clock', (hour) => {
    const mirrored = directionOfHour(hour, true);
    const onClock = directionOfHour(faceClock(hour), false);
    expect(mirrored.x).toBeCloseTo(onClock.x, 9);
    expect(mirrored.y).toBeCloseTo(onClock.y, 9);
  });

  it('the fire face is the deck turned over along the engine, for every engine, cylinder and hour', () => {
    fc.assert(
      fc.property(anyLayout, fc.constantFrom(...hours), fc.nat(), (layout, hour, pick) => {
        const places = cylinderPlaces(layout);
        const number = places[pick % places.length]?.number ?? 1;
        const deck = fromBore(
          shown(`ENG/BLK/DECK.1@near=BORE.${number};face=DECK;clk=${hour}`, {
            ...layout,
            engine: { ...layout.engine, liner: 'parent' },
          }),
          number,
        );
        const face = fromBore(
          shown(`ENG/BLK/DECK.1@near=BORE.${number};face=FIRE;clk=${hour}`, {
            ...layout,
            engine: { ...layout.engine, liner: 'parent' },
          }),
          number,
        );
        expect(face.x).toBeCloseTo(deck.x, 6);
        expect(face.y).toBeCloseTo(-deck.y, 6);
        expect(Math.hypot(deck.x, deck.y)).toBeGreaterThan(1);
      }),
      { numRuns: 150 },
    );
  });

  it('says the mirror in words, with the clock of the place itself', () => {
    const notes = shown('ENG/HD.1/FIRE@near=EVS.3.1;clk=2', plainLayout).notes;
    expect(notes).toEqual(['Seen from below: left and right swap.', "10 o'clock here is 2 on the deck."]);
    expect(shown('ENG/HD.1/BRIDGE.2', plainLayout).notes.at(-1)).toBe("7 o'clock here is 5 on the deck.");
    expect(shown('ENG/HD.1/FIRE@near=EVS.3.1;clk=11.5', plainLayout).notes.at(-1)).toBe(
      'half past 12 here is half past 11 on the deck.',
    );
  });
});

describe('the numbering', () => {
  it('every cylinder has its own bore, and in each row they stand in order from the free end', () => {
    fc.assert(
      fc.property(anyLayout, fc.boolean(), (layout, mirrored) => {
        const places = cylinderPlaces(layout);
        const { bores } = enginePlan(layout, mirrored);
        expect(bores.map(({ number }) => number).sort((a, b) => a - b)).toEqual(
          places.map(({ number }) => number).sort((a, b) => a - b),
        );
        expect(new Set(bores.map(({ centre }) => `${centre.x} ${centre.y}`)).size).toBe(bores.length);
        for (const a of places) {
          for (const b of places) {
            if (a.bank !== b.bank || a.fromFreeEnd >= b.fromFreeEnd) continue;
            const xOf = (number: number) => bores.find((bore) => bore.number === number)?.centre.x ?? Number.NaN;
            expect(xOf(a.number)).toBeLessThan(xOf(b.number));
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  it('a place of a cylinder is shown at the bore with that number, whatever the numbering', () => {
    fc.assert(
      fc.property(anyLayout, fc.nat(), (layout, pick) => {
        const places = cylinderPlaces(layout);
        const number = places[pick % places.length]?.number ?? 1;
        expect(fromBore(shown(`ENG/HG.1/FRING.${number}`, layout), number)).toEqual({ x: 0, y: 0 });
      }),
      { numRuns: 150 },
    );
  });

  // The handbook's 2.2: some makers count from the flywheel.
  it('number 1 stands at the fan or at the flywheel, as the scheme says', () => {
    const xOf1 = (scheme: 'free-first' | 'drive-first') =>
      enginePlan({ ...plainLayout, numbering: { scheme } }, false).bores.map(({ number, centre }) => ({
        number,
        x: centre.x,
      }));
    expect(
      xOf1('free-first')
        .sort((a, b) => a.x - b.x)
        .map(({ number }) => number),
    ).toEqual([1, 2, 3, 4]);
    expect(
      xOf1('drive-first')
        .sort((a, b) => a.x - b.x)
        .map(({ number }) => number),
    ).toEqual([4, 3, 2, 1]);
  });

  it('the right bank lies up, seen from above, and down, seen from below', () => {
    const layout: Layout = {
      ...plainLayout,
      engine: { ...plainLayout.engine, arrangement: 'V', heads: 2 },
      numbering: {
        scheme: 'list',
        list: [
          { number: 1, bank: 'L', fromFreeEnd: 1 },
          { number: 2, bank: 'R', fromFreeEnd: 1 },
          { number: 3, bank: 'L', fromFreeEnd: 2 },
          { number: 4, bank: 'R', fromFreeEnd: 2 },
        ],
      },
    };
    const yOf = (number: number, mirrored: boolean) =>
      enginePlan(layout, mirrored).bores.find((bore) => bore.number === number)?.centre.y ?? Number.NaN;
    expect(yOf(2, false)).toBeLessThan(yOf(1, false));
    expect(yOf(2, true)).toBeGreaterThan(yOf(1, true));
  });
});
