import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';

/** `wm trace` as another program calls it: its answer is one that can be built on. */
const project = resolve(import.meta.dirname, '../../..');
const edge = 240;
const folder = mkdtempSync(join(tmpdir(), 'wm trace '));
afterAll(() => rmSync(folder, { recursive: true }));

/** A dark line from (20, 20) to (220, 220), bowed aside by up to 12 px. */
const lineAt = (x: number): number => x + 12 * Math.sin((Math.PI * (x - 20)) / 200);

beforeAll(async () => {
  const data = Uint8Array.from({ length: edge * edge }, (_, at) => {
    const [x, y] = [at % edge, Math.floor(at / edge)];
    const grain = 8 * Math.sin(12.9898 * x + 78.233 * y);
    return 170 + grain - 90 * Math.exp(-(((y - lineAt(x)) / 2) ** 2));
  });
  const picture = sharp(data, { raw: { width: edge, height: edge, channels: 1 } });
  for (const kind of ['png', 'jpeg', 'webp', 'tiff'] as const)
    await picture
      .clone()
      .toFormat(kind, { quality: 95 })
      .toFile(join(folder, `crack.${kind}`));
});

/** In a folder of the caller's own, as `npm run wm` from there: npm itself moves to the project. */
const wm = (...words: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(project, 'electron/cli/main.ts'), ...words], {
    cwd: project,
    env: { ...process.env, npm_lifecycle_event: 'wm', INIT_CWD: folder },
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
};

const Answer = z.strictObject({
  image: z.strictObject({ width: z.literal(edge), height: z.literal(edge) }),
  tracer: z.string(),
  tracingMs: z.number(),
  unsure: z.boolean(),
  doubts: z.array(z.enum(['gap', 'along-straight-line', 'another-way'])),
  lengthPx: z.number(),
  medianWidthPx: z.number().nullable(),
  confidence: z.number().min(0).max(1),
  centre: z.array(z.tuple([z.number(), z.number()])),
  widthPx: z.array(z.number().nullable()),
  pointConfidence: z.array(z.number().min(0).max(1)),
});

describe('a trace asked for on the command line', () => {
  test.each(['png', 'jpeg', 'webp', 'tiff'])(
    'is one JSON value with its documented fields: %s, named from the caller’s folder',
    (kind) => {
      const { status, stdout } = wm('trace', `crack.${kind}`, '20,20', '220,220', '--json');
      expect(status).toBe(0);
      const { centre, widthPx, pointConfidence } = Answer.parse(JSON.parse(stdout));
      expect(widthPx).toHaveLength(centre.length);
      expect(pointConfidence).toHaveLength(centre.length);
      // Square to a line at 45 degrees, an offset in y counts for 0.71.
      const offs = centre.slice(5, -5).map(([x, y]) => Math.abs(y - lineAt(x)) * Math.SQRT1_2);
      expect(Math.max(...offs)).toBeLessThan(1);
    },
  );

  test.each([
    ['a click off the picture', ['crack.png', '20,20', '500,20'], 'point-outside-photo'],
    ['a picture that is not there', ['none.png', '20,20', '200,20'], 'photo-unreadable'],
  ])('is refused with a code and a sentence: %s', (_, words, code) => {
    const { status, stdout, stderr } = wm('trace', ...words, '--json');
    expect(status).toBe(1);
    const { error, sentence } = JSON.parse(stdout);
    expect(error.code).toBe(code);
    expect(stderr.trim()).toBe(sentence);
  });

  test('with a point that is none ends as a word that is not known, and answers nothing', () => {
    const { status, stdout, stderr } = wm('trace', 'crack.png', '20', '200,20', '--json');
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('two numbers with a comma');
  });
});
