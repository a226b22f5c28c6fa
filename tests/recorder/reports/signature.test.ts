import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { expect, it } from 'vitest';
import type { Signature } from '../../../shared-lib/choices/records.ts';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { structureOf } from './poppler.ts';

const dotsPerInch = 150;
const pixels = (mm: number): number => (mm / 25.4) * dotsPerInch;

/** A print of a visit that is decided on with this signature: the page, as poppler draws it, where the statement stands. */
const printed = async (signature: Signature | null) => {
  const { call, recorder } = openTestRecorder();
  const { visitId } = await addLoader({ call });
  const finding = await call('finding.add', { visitId, kind: 'condition', state: 'suspected', words: 'weeps' });
  await call('decision.take', {
    visitId,
    findingId: finding.id,
    decision: 'declined',
    by: 'Nils Aspen',
    statement: 'I was told of finding 1. I choose to leave it as it is.',
    signature,
  });
  const folder = freshFolder();
  const path = join(folder, 'signed.pdf');
  const token = randomUUID();
  recorder.offer({ token, path, for: 'write' });
  await call('report.print', { visitId, token });
  const pages = execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' }).split('\f');
  const page = pages.findIndex((text) => text.includes('What was decided')) + 1;
  const out = join(folder, 'page');
  execFileSync('pdftoppm', [
    '-r',
    String(dotsPerInch),
    '-f',
    `${page}`,
    '-l',
    `${page}`,
    '-png',
    '-singlefile',
    path,
    out,
  ]);
  return { png: PNG.sync.read(readFileSync(`${out}.png`)), path };
};

type Dot = readonly [x: number, y: number];

const darkIn = ({ width, height, data }: PNG): Dot[] => {
  const dots: Dot[] = [];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) if ((data[(y * width + x) * 4] ?? 255) < 100) dots.push([x, y]);
  return dots;
};

/** Unbroken rows of ink, by where they begin. */
const runsOf = (dots: readonly Dot[]) => {
  const runs: { left: number; foot: number; length: number }[] = [];
  for (const [x, y] of dots) {
    const last = runs.at(-1);
    if (last !== undefined && last.foot === y && last.left + last.length === x) last.length += 1;
    else runs.push({ left: x, foot: y, length: 1 });
  }
  return runs;
};

it('a signature is printed as it was drawn, to half a millimetre', async () => {
  // A large Z across the box: corners at known shares of its 60 by 18 mm.
  const corners: Signature[number] = [
    [0.1, 0.1],
    [0.9, 0.1],
    [0.1, 0.9],
    [0.9, 0.9],
  ];
  const signed = await printed([corners]);
  expect(structureOf(readFileSync(signed.path))).toContain('Figure');
  const { png } = signed;
  const drawn = darkIn(png);
  // The signing line is the one unbroken run of ink as long as the box is wide: everything is measured from its left end.
  const [line] = runsOf(drawn).filter(({ length }) => Math.abs(length - pixels(60)) < 4);
  if (line === undefined) throw new Error('no line to sign on');
  const { left, foot } = line;
  const inBox = drawn.filter(([, y]) => y < foot - 2 && y > foot - pixels(19));
  const near = ([x, y]: Dot) => inBox.some(([a, b]) => Math.hypot(a - x, b - y) < pixels(0.5));
  for (const [x, y] of corners) expect(near([left + x * pixels(60), foot - (1 - y) * pixels(18)])).toBe(true);
  const middle: Dot = [left + pixels(30), foot - pixels(9)];
  expect(near(middle)).toBe(true);
  expect(near([left + pixels(3), foot - pixels(9)])).toBe(false);
});
