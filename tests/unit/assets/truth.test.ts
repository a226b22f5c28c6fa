import { readdirSync, readFileSync } from 'node:fs';
import ExifReader from 'exifreader';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';

/**
 * The demo's photos against the truth written beside them. The projection is written anew here, from the camera model that
 * the file states (pinhole, pixel centres at whole numbers), so a slip in the renderer's own projection shows.
 */
const folder = new URL('../../../assets/demo/photos/', import.meta.url);
const xyz = z.tuple([z.number(), z.number(), z.number()]);
const uv = z.tuple([z.number(), z.number()]);
const line = z.object({ mm: z.array(xyz), px: z.array(uv) });
const Truth = z.object({
  picture: z.string(),
  width: z.int(),
  height: z.int(),
  orientation: z.union([z.literal(1), z.literal(6)]),
  camera: z.object({
    fx: z.number(),
    fy: z.number(),
    cx: z.number(),
    cy: z.number(),
    rotation: z.tuple([xyz, xyz, xyz]),
    translation: xyz,
  }),
  features: z.record(z.string(), z.object({ mm: xyz, px: uv })),
  cracks: z.record(z.string(), line.extend({ lengthMm: z.number(), endToEndMm: z.number() })),
  areas: z.record(z.string(), line),
});
type Truth = z.infer<typeof Truth>;
type Xyz = z.infer<typeof xyz>;
type Uv = z.infer<typeof uv>;

const names = readdirSync(folder)
  .filter((name) => name.endsWith('.truth.json'))
  .map((name) => name.replace('.truth.json', ''));
const truthOf = (name: string): Truth =>
  Truth.parse(JSON.parse(readFileSync(new URL(`${name}.truth.json`, folder), 'utf8')));

const dot = (a: Xyz, b: Xyz) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const between = (a: Uv, b: Uv) => Math.hypot(a[0] - b[0], a[1] - b[1]);

function project({ fx, fy, cx, cy, rotation, translation }: Truth['camera'], point: Xyz): Uv {
  const [x, y, depth] = [0, 1, 2].map((row) => dot(rotation[row] ?? [0, 0, 0], point) + (translation[row] ?? 0));
  if (x === undefined || y === undefined || depth === undefined || depth <= 0) throw new Error('behind the camera');
  return [(fx * x) / depth + cx, (fy * y) / depth + cy];
}

it('has sixteen photos, each with its truth, under 15 MB together', () => {
  const photos = readdirSync(folder).filter((name) => name.endsWith('.jpg'));
  expect(photos.map((name) => name.replace('.jpg', '')).sort()).toEqual([...names].sort());
  expect(photos).toHaveLength(16);
  const bytes = photos.reduce((sum, name) => sum + readFileSync(new URL(name, folder)).byteLength, 0);
  expect(bytes).toBeLessThan(15_000_000);
});

describe.each(names)('%s', (name) => {
  const truth = truthOf(name);

  it('projects every named point to its stated pixel', () => {
    const points = [
      ...Object.values(truth.features).map(({ mm, px }) => [mm, px] as const),
      ...[...Object.values(truth.cracks), ...Object.values(truth.areas)].flatMap(({ mm, px }) =>
        mm.map((point, index) => [point, px[index] ?? [Number.NaN, Number.NaN]] as const),
      ),
    ];
    expect(points.length).toBeGreaterThan(1);
    for (const [mm, px] of points) expect(between(project(truth.camera, mm), px as Uv)).toBeLessThan(0.01);
  });

  it('has a camera that only turns and moves', () => {
    const { rotation } = truth.camera;
    for (const a of [0, 1, 2] as const) {
      for (const b of [0, 1, 2] as const) expect(dot(rotation[a], rotation[b])).toBeCloseTo(a === b ? 1 : 0, 9);
    }
  });

  it.each(Object.entries(truth.cracks))(
    'states the lengths that the points of %s have',
    (_, { mm, lengthMm, endToEndMm }) => {
      const steps = mm.slice(1).map((point, index) => Math.hypot(...point.map((v, k) => v - (mm[index]?.[k] ?? 0))));
      expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(lengthMm, 2);
      const last = mm.at(-1) ?? [0, 0, 0];
      expect(Math.hypot(...last.map((v, k) => v - (mm[0]?.[k] ?? 0)))).toBeCloseTo(endToEndMm, 2);
    },
  );

  it('is upright once its orientation is applied, at most 3 megapixels, and names its camera and its hour', async () => {
    const bytes = readFileSync(new URL(`${name}.jpg`, folder));
    const stored = await sharp(bytes).metadata();
    const lying = truth.orientation === 6;
    expect([stored.width, stored.height]).toEqual(lying ? [truth.height, truth.width] : [truth.width, truth.height]);
    expect(stored.orientation ?? 1).toBe(truth.orientation);
    expect(truth.width * truth.height).toBeLessThanOrEqual(3_000_000);
    const exif = ExifReader.load(bytes);
    expect(exif.Model?.description).toBe('Bench phone');
    expect(exif.DateTimeOriginal?.description).toMatch(/^202[56]:\d\d:\d\d \d\d:\d\d:\d\d$/);
    expect(exif.OffsetTimeOriginal?.description).toBe('+01:00');
  });
});

/** An upright picture's light at any point, between pixels too; one number for each of red, green, blue. */
interface Picture {
  readonly at: (point: Uv) => Xyz;
}

async function read(name: string): Promise<Picture> {
  const { data, info } = await sharp(readFileSync(new URL(`${name}.jpg`, folder)))
    .rotate()
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const pixel = (x: number, y: number, channel: number) => data[(y * info.width + x) * 3 + channel] ?? 0;
  const channelAt = ([x, y]: Uv, channel: number) => {
    const [left, top] = [Math.floor(x), Math.floor(y)];
    const [right, low] = [x - left, y - top];
    const upper = pixel(left, top, channel) * (1 - right) + pixel(left + 1, top, channel) * right;
    const lower = pixel(left, top + 1, channel) * (1 - right) + pixel(left + 1, top + 1, channel) * right;
    return upper * (1 - low) + lower * low;
  };
  return { at: (point) => [channelAt(point, 0), channelAt(point, 1), channelAt(point, 2)] };
}

/** Where, along a short line across a predicted point, the weight of `sign` lies: its offset in pixels from the prediction. */
function offsetOf(picture: Picture, middle: Uv, along: Uv, reachPx: number, sign: (light: Xyz) => number): number {
  const steps = Array.from({ length: 81 }, (_, index) => ((index - 40) / 40) * reachPx);
  const values = steps.map((step) => sign(picture.at([middle[0] + along[0] * step, middle[1] + along[1] * step])));
  const sorted = [...values].sort((a, b) => a - b);
  // Only what stands clear of the ground counts.
  const ground = (sorted[20] ?? 0) + 0.35 * ((sorted[80] ?? 0) - (sorted[20] ?? 0));
  const weights = values.map((value) => Math.max(0, value - ground));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.reduce((sum, weight, index) => sum + weight * (steps[index] ?? 0), 0) / total;
}

const unit = (from: Uv, to: Uv): Uv => {
  const length = between(from, to);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
};
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe.each(['head-fire-face', 'tower-weld-spring'])('rule lines seen in %s', (name) => {
  const truth = truthOf(name);
  let picture: Picture;
  beforeAll(async () => {
    picture = await read(name);
  });

  it('stand within half a pixel of where the camera puts them', () => {
    const marks = Object.entries(truth.features).flatMap(([feature, { px }]) => {
      const mm = /^rule (\d+) mm$/.exec(feature)?.[1];
      return mm === undefined ? [] : [{ mm: Number(mm), px }];
    });
    const [zero, hundred] = [marks.find(({ mm }) => mm === 0)?.px, marks.find(({ mm }) => mm === 100)?.px];
    if (zero === undefined || hundred === undefined) throw new Error('no rule in the truth');
    const along = unit(zero, hundred);
    const halfMmPx = between(zero, hundred) / 200;
    const offsets = marks
      .filter(({ mm }) => mm >= 10 && mm <= 90)
      .map(({ px }) => offsetOf(picture, px, along, halfMmPx, ([r, g, b]) => 255 - (r + g + b) / 3));
    expect(offsets).toHaveLength(9);
    expect(Math.abs(mean(offsets))).toBeLessThan(0.25);
    for (const offset of offsets) expect(Math.abs(offset)).toBeLessThan(0.5);
  });
});

describe.each(['tower-weld-autumn', 'tower-weld-spring'])('the red line seen in %s', (name) => {
  it('lies on the true crack', async () => {
    const truth = truthOf(name);
    const picture = await read(name);
    const crack = truth.cracks['weld toe into the plate'];
    if (crack === undefined) throw new Error('no crack in the truth');
    const offsets: number[] = [];
    // Away from the weld bead, whose side shades the plate.
    for (let index = 10; index < crack.px.length - 2; index++) {
      const [before, here, after] = [crack.px[index - 1], crack.px[index], crack.px[index + 1]];
      if (before === undefined || here === undefined || after === undefined) continue;
      const [dx, dy] = unit(before, after);
      offsets.push(offsetOf(picture, here, [-dy, dx], 8, ([r, g, b]) => r - (g + b) / 2));
    }
    expect(offsets.length).toBeGreaterThan(4);
    // The bleed is wider than the crack and uneven, so single places may be off by more than the line's middle.
    expect(Math.abs(mean(offsets))).toBeLessThan(0.5);
    expect(mean(offsets.map(Math.abs))).toBeLessThan(1);
  });
});
