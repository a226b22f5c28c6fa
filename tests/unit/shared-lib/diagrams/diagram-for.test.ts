import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Diagram, diagramsFor, type PlacedFinding } from '../../../../shared-lib/diagrams/diagram-for.ts';
import { diagramKinds } from '../../../../shared-lib/diagrams/index.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import { findingStates } from '../../../../shared-lib/model/finding.ts';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { checkLocation } from '../../../../shared-lib/parts/check-location.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { plainLayout } from '../../../support/ranking/a-finding.ts';
import { anyMachine, placesOn } from '../parts/arbitrary-places.ts';

const tiers = [0, 1, 2, 3, 4] as const;

/** A handful of findings, each with some places that its machine has. */
const anyFindings = anyMachine.chain((machine) =>
  fc
    .array(
      fc.record({
        tier: fc.constantFrom(...tiers),
        state: fc.constantFrom(...findingStates),
        locations: fc.array(placesOn(machine), { minLength: 1, maxLength: 3 }),
      }),
      { minLength: 1, maxLength: 14 },
    )
    .map((findings) => ({
      layout: machine.layout,
      findings: findings.map(
        ({ tier, state, locations }, index): PlacedFinding => ({
          findingId: `f${index}`,
          tag: { number: index + 1, tier, state },
          locations,
        }),
      ),
    })),
);

function inside({ x, y }: XY, { width, height }: Diagram): boolean {
  return x >= -0.01 && y >= -0.01 && x <= width + 0.01 && y <= height + 0.01;
}

function everyDiagram(
  check: (diagrams: readonly Diagram[], findings: readonly PlacedFinding[], layout: Layout) => void,
) {
  fc.assert(
    fc.property(anyFindings, ({ findings, layout }) => check(diagramsFor(findings, layout), findings, layout)),
    { numRuns: 60 },
  );
}

describe('any findings of any machine', () => {
  it("every place of every finding is on exactly one drawing, under the finding's tag", () => {
    everyDiagram((diagrams, findings) => {
      for (const { findingId, locations } of findings) {
        for (const location of new Set(locations)) {
          const on = diagrams.filter((diagram) =>
            diagram.anchors.some((anchor) => anchor.findingId === findingId && anchor.location === location),
          );
          expect(on.length, location).toBe(1);
          expect(on[0]?.tags.filter((tag) => tag.findingId === findingId).length).toBe(1);
        }
      }
    });
  });

  it('anchors, lines, words and tags lie inside the drawing', () => {
    everyDiagram((diagrams) => {
      for (const diagram of diagrams) {
        const points = [
          ...diagram.anchors.flatMap(({ point, strokes }) => [point, ...strokes.flat()]),
          ...diagram.tags.flatMap(({ at, width, height }) => [at, { x: at.x + width, y: at.y + height }]),
          ...diagram.parts.flatMap(({ outline }) => outline),
          ...diagram.primitives.flatMap((each) =>
            each.kind === 'path' ? each.points : each.kind === 'label' ? [each.at] : [],
          ),
        ];
        for (const point of points) {
          if (!inside(point, diagram))
            expect.fail(`${diagram.kind} ${JSON.stringify(point)} of ${diagram.width} x ${diagram.height}`);
        }
      }
    });
  });

  it('no tag lies over another, nor over the drawing', () => {
    everyDiagram((diagrams) => {
      for (const { tags, anchors, kind } of diagrams) {
        for (const [index, a] of tags.entries()) {
          for (const b of tags.slice(index + 1)) {
            const apart =
              a.at.x + a.width <= b.at.x ||
              b.at.x + b.width <= a.at.x ||
              a.at.y + a.height <= b.at.y ||
              b.at.y + b.height <= a.at.y;
            if (!apart) expect.fail(`${kind}: ${JSON.stringify(a.at)} and ${JSON.stringify(b.at)}`);
          }
          for (const { point } of anchors) {
            const covers =
              point.x > a.at.x && point.x < a.at.x + a.width && point.y > a.at.y && point.y < a.at.y + a.height;
            expect(covers).toBe(false);
          }
        }
      }
    });
  });

  it('leaders run from each tag to its own places', () => {
    everyDiagram((diagrams) => {
      for (const { tags, anchors } of diagrams) {
        for (const { findingId, leaders } of tags) {
          expect(leaders.map(({ to }) => to)).toEqual(
            anchors.filter((anchor) => anchor.findingId === findingId).map(({ point }) => point),
          );
        }
      }
    });
  });

  it('the same findings are drawn the same', () => {
    everyDiagram((diagrams, findings, layout) => {
      expect(JSON.stringify(diagramsFor(structuredClone(findings), structuredClone(layout)))).toBe(
        JSON.stringify(diagrams),
      );
    });
  });

  it('every part that can be picked is one that the machine can have, and has a name', () => {
    everyDiagram((diagrams, _findings, layout) => {
      for (const { parts } of diagrams) {
        for (const { path, name } of parts) {
          expect(() => checkLocation(parseLocation(path), layout), path).not.toThrow();
          expect(name.length).toBeGreaterThan(2);
        }
      }
    });
  });
});

const kindOf = (location: string, layout: Layout = plainLayout) =>
  diagramsFor([{ findingId: 'f', tag: { number: 1, tier: 0, state: 'confirmed' }, locations: [location] }], layout)[0]
    ?.kind;

describe('which drawing', () => {
  it.each([
    ['ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3', 'fire-face'],
    ['ENG/BLK/DECK.1@btw=WJ.2,BOLT.5;clk=2', 'deck-plan'],
    ['ENG/BLK/BORE.3@side=THR;z=90', 'cylinder-section'],
    ['ENG/PST.2/SKT@side=THR', 'cylinder-section'],
    ['ENG/CRK/MBRG.4', 'crankshaft'],
    ['HYD/CYL.boom.L/RODH@clk=6;z=210', 'hydraulic-cylinder'],
    ['HYD/HOSE.boom.L@end=A;z=340', 'line-run'],
    ['FRM/LOADERTWR.R@near=PIN.2:30', 'loader-tower'],
    ['ELEC/GND.1', 'assembly-tree'],
    ['ENG/LUB/PUMP', 'assembly-tree'],
  ])('%s', (location, kind) => {
    expect(kindOf(location)).toBe(kind);
  });

  it('each kind is used by one of these at least', () => {
    expect(new Set(diagramKinds.map(({ id }) => id)).size).toBe(8);
  });

  it('one finding on several cylinders stands on the plan, on one cylinder in its section', () => {
    const wet: Layout = { ...plainLayout, engine: { ...plainLayout.engine, liner: 'wet' } };
    const kinds = (locations: readonly string[]) =>
      diagramsFor([{ findingId: 'f', tag: { number: 1, tier: 0, state: 'confirmed' }, locations }], wet).map(
        ({ kind }) => kind,
      );
    expect(kinds(['ENG/LNR.1@side=THR', 'ENG/LNR.2@side=THR'])).toEqual(['deck-plan']);
    expect(kinds(['ENG/LNR.1@side=THR', 'ENG/PST.1/SKT'])).toEqual(['cylinder-section']);
  });
});

describe('the section of a cylinder', () => {
  // The handbook's 2.2: clockwise from the free end, the thrust side is the right, looking from the drive end.
  it.each([
    ['CW', 1],
    ['CCW', -1],
  ] as const)('%s: the thrust side is drawn on its side of the piston', (rotation, sign) => {
    const layout: Layout = { ...plainLayout, engine: { ...plainLayout.engine, rotation } };
    const at = (side: string) =>
      diagramsFor(
        [
          {
            findingId: 'f',
            tag: { number: 1, tier: 0, state: 'confirmed' },
            locations: [`ENG/PST.2/SKT@side=${side}`],
          },
        ],
        layout,
      )[0]?.anchors[0]?.point.x ?? Number.NaN;
    expect(Math.sign(at('THR') - at('MIN'))).toBe(sign);
    expect(at(sign === 1 ? 'R' : 'L')).toBe(at('THR'));
  });

  it('deeper in the bore is lower in the drawing', () => {
    const yOf = (mm: number) =>
      diagramsFor(
        [
          {
            findingId: 'f',
            tag: { number: 1, tier: 0, state: 'confirmed' },
            locations: [`ENG/BLK/BORE.2@side=THR;z=${mm}`, 'ENG/BLK/BORE.2@z=200'],
          },
        ],
        plainLayout,
      )[0]?.anchors[0]?.point.y ?? Number.NaN;
    expect(yOf(20)).toBeLessThan(yOf(90));
    expect(yOf(90)).toBeLessThan(yOf(180));
  });
});

it('a hose is measured from the end that is named', () => {
  const xOf = (location: string) =>
    diagramsFor(
      [{ findingId: 'f', tag: { number: 1, tier: 0, state: 'confirmed' }, locations: [location] }],
      plainLayout,
    )[0]?.anchors[0]?.point.x ?? Number.NaN;
  const fromA = xOf('HYD/HOSE.boom.L@end=A;z=100');
  const fromB = xOf('HYD/HOSE.boom.L@end=B;z=100');
  expect(fromA).toBeLessThan(xOf('HYD/HOSE.boom.L@end=A;z=400'));
  expect(fromB).toBeGreaterThan(xOf('HYD/HOSE.boom.L@end=B;z=400'));
  expect(fromA).toBeLessThan(fromB);
});
