import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { greyOf, readUprightPixels } from '../../../../electron/recorder/measuring/pixels.ts';
import { CalibrationInput, MeasuredShape } from '../../../../shared-lib/calibration/input.ts';
import { measureShape } from '../../../../shared-lib/calibration/measure.ts';
import { traceBox, traceLine } from '../../../../shared-lib/tracing/trace.ts';
import { lineDistance } from '../../../bench/tracing/line-distance.ts';

type Three = readonly [number, number, number];
type Two = readonly [number, number];
interface Truth {
  readonly picture: string;
  readonly features: Readonly<Record<string, { readonly mm: Three; readonly px: Two }>>;
  readonly cracks?: Readonly<
    Record<string, { readonly lengthMm: number; readonly mm: readonly Three[]; readonly px: readonly Two[] }>
  >;
}

/** Our own rendered scenes: camera, features and cracks are exact, from the scene's description and not from its pixels. */
const folder = resolve(import.meta.dirname, '../../../../assets/demo/photos');
const xy = ([x, y]: Two | Three) => ({ x, y });

const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.truth.json'))
  .flatMap((name) => {
    const truth = JSON.parse(readFileSync(join(folder, name), 'utf8')) as Truth;
    return Object.entries(truth.cracks ?? {}).map(([crackName, crack]) => {
      const height = crack.mm[0]?.[2] ?? 0;
      const isLevel = crack.mm.every(([, , z]) => Math.abs(z - height) < 0.05);
      const inPlane = Object.values(truth.features).filter(({ mm }) => isLevel && Math.abs(mm[2] - height) < 0.05);
      return { truth, crackName, crack, inPlane };
    });
  });

describe('rendered scenes', () => {
  const measurable = cases.filter(({ inPlane }) => inPlane.length >= 4);
  test('at least two cracks lie in a plane with four known features', () => {
    expect(measurable.length).toBeGreaterThanOrEqual(2);
  });

  test.each(measurable.map((one) => [`${one.truth.picture}: ${one.crackName}`, one] as const))(
    '%s is measured to a tenth of a millimetre',
    (_, { crack, inPlane }) => {
      const points = inPlane.map(({ px, mm }) => ({ px: xy(px), mm: xy(mm) }));
      const calibration = CalibrationInput.parse({ method: 'known-points', points, clickingPx: 0.5 });
      const shape = MeasuredShape.parse({ shape: 'path', points: crack.px.map(xy), pointPx: 0.1 });
      const { value, expanded } = measureShape(calibration, shape);
      expect(Math.abs(value - crack.lengthMm)).toBeLessThan(0.1);
      expect(Math.abs(value - crack.lengthMm)).toBeLessThan(expanded ?? 0);
    },
  );

  // The scenes whose dark line is a crack; the others' lines are ways along a part, worn or measured.
  const cracked = ['block-deck.jpg', 'head-fire-face.jpg', 'tower-weld-autumn.jpg', 'tower-weld-spring.jpg'];
  const traced = cases.filter(
    ({ truth }) => cracked.includes(truth.picture) && existsSync(join(folder, truth.picture)),
  );
  test.each(traced.map((one) => [`${one.truth.picture}: ${one.crackName}`, one] as const))(
    '%s is traced to under a pixel',
    async (_, { truth, crack }) => {
      const picture = await readUprightPixels(join(folder, truth.picture));
      const line = crack.px.map(xy);
      const [first, last] = [line[0], line.at(-1)];
      if (!first || !last) throw new Error('no line in the truth');
      const trace = traceLine(greyOf(picture, traceBox([first, last], picture)), { points: [first, last] });
      expect(lineDistance(line, trace.centre).meanPx).toBeLessThan(1);
    },
    60_000,
  );
});
