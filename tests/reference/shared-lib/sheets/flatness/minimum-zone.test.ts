import { createRequire } from 'node:module';
import fc from 'fast-check';
import type loadHighsType from 'highs';
import { describe, expect, it } from 'vitest';
import { compute } from '../../../../../shared-lib/sheets/compute.ts';
import { minimumZone } from '../../../../../shared-lib/sheets/flatness/minimum-zone.ts';
import type { Vector } from '../../../../../shared-lib/sheets/flatness/vectors.ts';

const zoneOf = (points: readonly Vector[]): number => minimumZone(points)?.width ?? Number.NaN;

/** A public five-point set (engineering forum), solved with scipy: linear programme iterated to the normal distance. */
const forumPoints: Vector[] = [
  [11.5, 7, 1.1],
  [18.5, 6.9, 1.03],
  [4.5, 13, 1.02],
  [25.5, 30, 1.03],
  [11.5, 37.5, 1.02],
];
/** Five points of a public regression-plane test, solved in the same way. */
const regressionPoints: Vector[] = [
  [1.1, 2.1, 8.1],
  [3.2, 4.2, 8],
  [5.3, 1.3, 8.2],
  [3.4, 2.4, 8.3],
  [1.5, 4.5, 8],
];
/** A grid like a head's, constructed; solved with scipy. */
const headHeights = [
  [0, -0.012, -0.02, -0.015, -0.004],
  [0.006, -0.018, -0.031, -0.022, -0.002],
  [0.01, -0.003, -0.014, -0.009, 0.005],
];
const headPoints: Vector[] = headHeights.flatMap((row, j) => row.map((z, i): Vector => [150 * i, 100 * j, z]));

describe('flatness by ISO 1101 / ISO 12781-1, against figures solved with numpy and scipy', () => {
  it('five points of a forum: 0.06726', () =>
    expect(Math.abs(zoneOf(forumPoints) - 0.06726)).toBeLessThanOrEqual(2e-5));
  it('five points of a regression test: 0.18917', () =>
    expect(Math.abs(zoneOf(regressionPoints) - 0.18917)).toBeLessThanOrEqual(2e-4));
  it('a head of fifteen points: 0.03425', () =>
    expect(Math.abs(zoneOf(headPoints) - 0.03425)).toBeLessThanOrEqual(2e-5));

  it('the least-squares plane overstates them by 7.2, 4.1 and 2.6 %', () => {
    const excess = [forumPoints, regressionPoints, headPoints].map((points) => {
      const zone = minimumZone(points);
      return zone === null ? Number.NaN : Number(((zone.leastSquares.peakToValley / zone.width - 1) * 100).toFixed(1));
    });
    expect(excess).toEqual([7.2, 4.1, 2.6]);
  });

  it('a tilted true plane with one bump of 0.030 is 0.030 out', () => {
    const points = [0, 1, 2].flatMap((j) =>
      [0, 1, 2].map((i): Vector => [100 * i, 100 * j, 0.1 * i + 0.2 * j + (i === 1 && j === 1 ? 0.03 : 0)]),
    );
    expect(Math.abs(zoneOf(points) - 0.03)).toBeLessThanOrEqual(1e-6);
  });

  it('the sheet gives the zone, with the least-squares figure beside it', () => {
    const outcome = compute('MS-13', {
      inputs: {
        x: '0/150/300/450/600 mm',
        y: '0/100/200 mm',
        heights: headHeights.map((row) => row.join('/')).join('; '),
      },
    });
    const [line] = outcome.results;
    expect(line?.of).toBe('flatness');
    expect(line?.value).toBeCloseTo(0.03425, 4);
    expect(line?.crossCheck?.value).toBeCloseTo(0.03425 * 1.026, 4);
    expect(line?.verdict).toBe('within');
  });
});

// A CommonJS module that is its own default: required, as its types and its code disagree about importing it.
const loadHighs: typeof loadHighsType.default = createRequire(import.meta.url)('highs');
const highs = await loadHighs();

/**
 * The independent answer: HiGHS looks for the plane with the least largest distance, taken upwards and brought square to
 * the plane. On faces that slope by less than a thousandth the two differ by less than a millionth of the height.
 */
function byLinearProgramme(points: readonly Vector[]): number {
  const reach = Math.max(...points.flatMap(([x, y]) => [Math.abs(x), Math.abs(y)]));
  const size = Math.max(...points.map(([, , z]) => z)) - Math.min(...points.map(([, , z]) => z));
  const rows = points.flatMap(([x, y, z], index) => {
    const plane = `${fixed(x / reach)} a + ${fixed(y / reach)} b + c`;
    return [` u${index}: ${plane} + h >= ${fixed(z / size)}`, ` l${index}: ${plane} - h <= ${fixed(z / size)}`];
  });
  const problem = `Minimize\n h\nSubject To\n${rows.join('\n').replaceAll('+ -', '- ')}\nBounds\n a free\n b free\n c free\n h >= 0\nEnd`;
  const { Columns } = highs.solve(problem, { primal_feasibility_tolerance: 1e-10, dual_feasibility_tolerance: 1e-10 });
  const value = (name: string) => Number((Columns[name] as { Primal: number } | undefined)?.Primal ?? Number.NaN);
  const slope = Math.hypot(value('a'), value('b')) * (size / reach);
  return (2 * value('h') * size) / Math.sqrt(1 + slope ** 2);
}

const fixed = (value: number): string => value.toFixed(15);

describe('against an independent solver (HiGHS, linear programming)', () => {
  const face = (most: number, stepMm: number) =>
    fc
      .tuple(fc.integer({ min: 3, max: 7 }), fc.integer({ min: 3, max: 5 }))
      .chain(([nx, ny]) =>
        fc
          .array(fc.integer({ min: -most, max: most }), { minLength: nx * ny, maxLength: nx * ny })
          .map((steps) => steps.map((step, k): Vector => [120 * (k % nx), 90 * Math.floor(k / nx), step * stepMm])),
      )
      .filter((points) => new Set(points.map(([, , z]) => z)).size > 1);

  const agrees = (points: readonly Vector[]) => {
    const expected = byLinearProgramme(points);
    expect(Math.abs(zoneOf(points) - expected)).toBeLessThanOrEqual(1e-6 * Math.max(expected, 0.01));
  };

  it('a face read by dial has the same zone', () => {
    fc.assert(fc.property(face(60, 0.001), agrees), { numRuns: 60 });
  });

  it('a face read by feelers, most heights alike, has the same zone', () => {
    fc.assert(fc.property(face(2, 0.05), agrees), { numRuns: 100 });
  });
});

describe('whatever the part', () => {
  const height = fc.integer({ min: -200, max: 200 }).map((micrometres) => micrometres / 1000);
  const face = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 25 }), height), {
      minLength: 5,
      maxLength: 60,
    })
    .map((all) => {
      // One height for one place, as a dial reads it.
      const places = new Map(all.map(([i, j, z]) => [`${i} ${j}`, [15 * i, 15 * j, z] as const]));
      return [...places.values()].map(([x, y, z]): Vector => [x, y, z]);
    })
    .filter((points) => minimumZone(points) !== null);

  it('tilting, turning and moving it changes nothing', () => {
    fc.assert(
      fc.property(
        face,
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (points, tilt, turn, along) => {
          const moved = points.map(([x, y, z]): Vector => {
            const [x1, y1] = [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
            return [
              x1 * Math.cos(tilt) - z * Math.sin(tilt) + along,
              y1 - along,
              x1 * Math.sin(tilt) + z * Math.cos(tilt),
            ];
          });
          expect(zoneOf(moved)).toBeCloseTo(zoneOf(points), 8);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('its mirror image is as flat, and twice the size twice as far out', () => {
    fc.assert(
      fc.property(face, (points) => {
        const zone = zoneOf(points);
        expect(zoneOf(points.map(([x, y, z]): Vector => [x, y, -z]))).toBeCloseTo(zone, 9);
        expect(zoneOf(points.map(([x, y, z]): Vector => [2 * x, 2 * y, 2 * z]))).toBeCloseTo(2 * zone, 9);
      }),
      { numRuns: 100 },
    );
  });

  it('the zone is never more than the least-squares figure, nor than the raw range, and holds every point', () => {
    fc.assert(
      fc.property(face, (points) => {
        const zone = minimumZone(points);
        if (zone === null) return;
        const raw = Math.max(...points.map(([, , z]) => z)) - Math.min(...points.map(([, , z]) => z));
        expect(zone.width).toBeLessThanOrEqual(zone.leastSquares.peakToValley + 1e-12);
        expect(zone.width).toBeLessThanOrEqual(raw + 1e-12);
        for (const each of zone.heights) expect(Math.abs(each)).toBeLessThanOrEqual(zone.width / 2 + 1e-12);
      }),
      { numRuns: 150 },
    );
  });

  it('no direction tried at random is thinner', () => {
    fc.assert(
      fc.property(
        face,
        fc.array(
          fc.tuple(
            fc.double({ min: -2e-3, max: 2e-3, noNaN: true }),
            fc.double({ min: -2e-3, max: 2e-3, noNaN: true }),
          ),
          { minLength: 50, maxLength: 50 },
        ),
        (points, slopes) => {
          const zone = zoneOf(points);
          for (const [a, b] of slopes) {
            const along = points.map(([x, y, z]) => (z - a * x - b * y) / Math.sqrt(1 + a ** 2 + b ** 2));
            expect(Math.max(...along) - Math.min(...along)).toBeGreaterThanOrEqual(zone - 1e-9);
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('one more point never makes it flatter', () => {
    fc.assert(
      fc.property(
        face,
        fc.tuple(fc.integer({ min: 601, max: 700 }), fc.integer({ min: 0, max: 300 }), height),
        (points, [x, y, z]) => {
          expect(zoneOf([...points, [x, y, z]])).toBeGreaterThanOrEqual(zoneOf(points) - 1e-10);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('a true plane is flat and points on a line are no face', () => {
    expect(
      zoneOf([0, 1, 2, 3].flatMap((i) => [0, 1, 2].map((j): Vector => [50 * i, 70 * j, 0.01 * i - 0.02 * j]))),
    ).toBeLessThan(1e-12);
    expect(
      minimumZone([
        [0, 0, 0],
        [1, 1, 1],
        [2, 2, 2],
        [3, 3, 3],
      ]),
    ).toBeNull();
    expect(
      minimumZone([
        [0, 0, 0],
        [1, 1, 1],
      ]),
    ).toBeNull();
  });
});
