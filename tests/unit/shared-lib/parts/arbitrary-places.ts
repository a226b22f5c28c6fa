import fc from 'fast-check';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { componentTree } from '../../../../shared-lib/parts/component-tree.ts';
import { formatLocation } from '../../../../shared-lib/parts/format-location.ts';
import {
  ends,
  faces,
  type Location,
  type LocationPath,
  placeMarks,
  type Qualifiers,
  sides,
  views,
  zones,
} from '../../../../shared-lib/parts/location.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';

/** Cylinders in two banks, numbered in any order at all. */
function listNumbering(cylinders: number): fc.Arbitrary<Layout['numbering']> {
  return fc
    .shuffledSubarray(
      Array.from({ length: cylinders }, (_, index) => index + 1),
      { minLength: cylinders },
    )
    .chain((numbers) =>
      fc.boolean().map((inBanks) => ({
        scheme: 'list' as const,
        list: numbers.map((number, index) =>
          inBanks
            ? {
                number,
                bank: index % 2 === 0 ? ('L' as const) : ('R' as const),
                fromFreeEnd: Math.floor(index / 2) + 1,
              }
            : { number, fromFreeEnd: index + 1 },
        ),
      })),
    );
}

export const anyLayout: fc.Arbitrary<Layout> = fc
  .record({
    arrangement: fc.constantFrom('inline' as const, 'V' as const, 'opposed' as const),
    cylinders: fc.integer({ min: 1, max: 12 }),
    liner: fc.constantFrom('parent' as const, 'dry' as const, 'wet' as const, 'unknown' as const),
    fuel: fc.constantFrom('diesel' as const, 'petrol' as const, 'LPG' as const),
    cooling: fc.constantFrom('liquid' as const, 'air' as const, 'oil' as const),
    intake: fc.constantFrom(1, 2),
    exhaust: fc.constantFrom(1, 2),
    stationary: fc.boolean(),
    articulated: fc.boolean(),
  })
  .chain((wish) =>
    fc
      .oneof(
        fc.constant({ scheme: 'free-first' as const }),
        fc.constant({ scheme: 'drive-first' as const }),
        listNumbering(wish.cylinders),
      )
      .map((numbering) => ({
        engine: {
          arrangement: wish.arrangement,
          cylinders: wish.cylinders,
          heads: wish.arrangement === 'inline' ? 1 : 2,
          valves: { intake: wish.intake, exhaust: wish.exhaust },
          liner: wish.liner,
          rotation: 'CW' as const,
          heading: 0 as const,
          fuel: wish.fuel,
          cooling: wish.cooling,
        },
        numbering,
        hydraulics: ['boom', 'jack'],
        volts: 12 as const,
        stationary: wish.stationary,
        articulated: wish.articulated,
      })),
  );

const halfHour = fc.integer({ min: 1, max: 24 }).map((halves) => halves / 2);
const millimetres = fc.integer({ min: 0, max: 5000 }).map((tenths) => tenths / 10);

/** Any combination of qualifiers; references are taken from the paths given. */
function anyQualifiers(reference: fc.Arbitrary<LocationPath>): fc.Arbitrary<Qualifiers> {
  return fc.record(
    {
      from: reference,
      to: reference,
      between: fc.tuple(reference, reference),
      near: fc.record({ part: reference, mm: fc.option(millimetres) }),
      side: fc.constantFrom(...sides),
      face: fc.constantFrom(...faces),
      end: fc.constantFrom(...ends),
      view: fc.constantFrom(...views),
      clock: fc.record({ fromHour: halfHour, toHour: halfHour }),
      depth: fc.tuple(millimetres, millimetres).map(([a, b]) => ({ fromMm: Math.min(a, b), toMm: Math.max(a, b) })),
      zone: fc.constantFrom(...zones),
    },
    { requiredKeys: [] },
  );
}

const anyPath: fc.Arbitrary<LocationPath> = fc.array(
  fc.record({
    code: fc.constantFrom('ENG', 'HD', 'PORT-I', '3PL', 'X', 'OIL-E', 'A1'),
    indices: fc.array(
      fc.oneof(
        fc.integer({ min: 0, max: 9999 }),
        fc.constantFrom('boom', 'jack', 'b', 'upper'),
        fc.constantFrom(...placeMarks),
      ),
      { maxLength: 3 },
    ),
  }),
  { minLength: 1, maxLength: 4 },
);

/** Anything the grammar can say, whether or not a machine has it. */
export const anyLocation: fc.Arbitrary<Location> = fc.record({ path: anyPath, qualifiers: anyQualifiers(anyPath) });

function pathsOn(layout: Layout): readonly LocationPath[] {
  return componentTree(layout)
    .flatMap((system) => [system, ...system.assemblies.flatMap((assembly) => assembly.places)])
    .map((place) => parseLocation(place.path).path);
}

export interface Machine {
  readonly layout: Layout;
  /** Every place its picker offers. */
  readonly paths: readonly LocationPath[];
}

/** Three dozen machines of every kind, always the same: their trees are made once. */
const machines: readonly Machine[] = fc
  .sample(anyLayout, { numRuns: 36, seed: 21 })
  .map((layout) => ({ layout, paths: pathsOn(layout) }));

export const anyMachine: fc.Arbitrary<Machine> = fc.constantFrom(...machines);

/** Places that a machine has, as text. References are whole paths, which every place can point at. */
export function placesOn(machine: Machine): fc.Arbitrary<string> {
  const path = fc.constantFrom(...machine.paths);
  return fc
    .record({ path, qualifiers: anyQualifiers(path) })
    .map(formatLocation)
    .filter((text) => text.length <= 300);
}

export interface PlaceOnMachine {
  readonly layout: Layout;
  readonly text: string;
}

/** A machine and a place on it. */
export const anyPlace: fc.Arbitrary<PlaceOnMachine> = anyMachine.chain((machine) =>
  placesOn(machine).map((text) => ({ layout: machine.layout, text })),
);
