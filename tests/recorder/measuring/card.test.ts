import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cardFaces } from '../../../shared-lib/calibration/card/face.ts';
import { findCard } from '../../../shared-lib/calibration/card/find-card.ts';
import { distance } from '../../../shared-lib/geometry/plane.ts';
import { writeCardPhoto } from '../../support/calibration/card-photo.ts';
import { freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { greyPageOf, infoOf, textOfPages } from '../reports/poppler.ts';
import { withPhoto, withPicture } from './bench.ts';

const dotsPerInch = 250;
const dots = (mm: number): number => (mm / 25.4) * dotsPerInch;

/** Lengths of the unbroken dark lines along rows and along columns, in millimetres of the print, above 50 mm. */
const longLines = ({ data, width, height }: Awaited<ReturnType<typeof greyPageOf>>): number[] => {
  const lengths: number[] = [];
  const along = (count: number, length: number, at: (line: number, k: number) => number): void => {
    for (let line = 0; line < count; line += 1) {
      for (let k = 0, begun = 0; k <= length; k += 1) {
        if (k < length && (data[at(line, k)] ?? 255) < 140) continue;
        const mm = ((k - begun) / dotsPerInch) * 25.4;
        if (mm > 50) lengths.push(mm);
        begun = k + 1;
      }
    }
  };
  along(height, width, (y, x) => y * width + x);
  along(width, height, (x, y) => y * width + x);
  return lengths;
};

describe('the sheet with the calibration cards', () => {
  // Sizes of the papers: ISO 216 (A4), ANSI/ASME Y14.1 (letter). The reader of the PDF is poppler.
  it.each([
    ['a4', '595.276 x 841.89 pts (A4)'],
    ['us-letter', '612 x 792 pts (letter)'],
  ] as const)(
    'on %s is one page, true to size: squares, bars, both cards',
    async (paper, size) => {
      const { recorder, dataFolder, call } = openTestRecorder();
      const path = join(dataFolder, 'cards.pdf');
      recorder.offer({ token: 'cards', path, for: 'write' });
      expect(await call('card.print', { token: 'cards', paper })).toEqual({ path });
      const pdf = readFileSync(path);
      expect(infoOf(pdf)).toMatchObject({ Pages: '1', 'Page size': size });
      expect(textOfPages(pdf).join(' ').replace(/\s+/g, ' ')).toContain('Print at 100 %');

      const page = await greyPageOf(pdf, dotsPerInch);
      const lines = longLines(page);
      // A dot of the print at each end.
      for (const mm of [150, 6 * 25.4, 100]) {
        expect(
          lines.some((length) => Math.abs(length - mm) < 0.25),
          `a bar of ${mm} mm`,
        ).toBe(true);
      }
      const found = findCard(page);
      expect(found?.points).toHaveLength(40);
      const [first, last] = [found?.points[0], found?.points.at(-1)];
      if (!found || !first || !last) throw new Error('no card on the sheet');
      expect(Math.abs(distance(first.px, last.px) / dots(distance(first.mm, last.mm)) - 1)).toBeLessThan(0.0005);

      // With the large card cut off the sheet, the small one is what is left.
      const below = Math.ceil(Math.max(...found.outline.map(({ y }) => y)));
      const rest = { ...page, height: page.height - below, data: page.data.slice(below * page.width) };
      const small = findCard(rest);
      expect([found.face, small?.face]).toEqual(['large', 'small']);
      const [a, b] = [small?.points[0], small?.points.at(-1)];
      expect(a && b && Math.abs(distance(a.px, b.px) / dots(distance(a.mm, b.mm)) - 1)).toBeLessThan(0.001);
    },
    60_000,
  );
});

describe('a card in a photo', () => {
  const [large] = cardFaces;
  if (!large) throw new Error('no card');

  it('gives the scale of its face: a length beside it is true within what is stated', async () => {
    const folder = freshFolder();
    const { path, see } = await writeCardPhoto(join(folder, 'card.jpg'), { face: large, tiltDegrees: 35 }, 4101);
    const { call, visitId, shot } = await withPicture(path);
    const card = await call('calibration.findCard', { shotId: shot.id, barMm: 150 });
    expect(card.face).toBe('large');
    expect(card.points.length).toBeGreaterThan(35);
    await expect(call('calibration.add', { shotId: shot.id, reference: card.reference })).rejects.toThrow(
      'calibration-without-plane',
    );
    const plane = await call('calibration.add', { shotId: shot.id, reference: { ...card.reference, plane: 'deck' } });
    expect(plane.rmsPx).toBeLessThan(0.5);
    const ends = [see({ x: 10, y: 112 }), see({ x: 90, y: 112 })];
    await call('mark.add', { shotId: shot.id, shape: 'line', points: ends });
    const { sizes } = await call('visit.get', { id: visitId });
    const { value, expanded } = sizes[0]?.size ?? { value: 0, expanded: 0 };
    expect(Math.abs(value - 80)).toBeLessThan(expanded ?? 0);
    expect(expanded).toBeLessThan(2);

    // Printed 2 % large, as the rule on the bar says: the same photo shows sizes 2 % larger, and knows them less surely unread.
    const grown = await call('calibration.findCard', { shotId: shot.id, barMm: 153 });
    expect(grown.reference.points[5]?.mm.x).toBeCloseTo((card.reference.points[5]?.mm.x ?? 0) * 1.02, 9);
    const unread = await call('calibration.findCard', { shotId: shot.id });
    expect(unread.reference.referenceShare).toBeGreaterThan(3 * (card.reference.referenceShare ?? 1));
  }, 60_000);

  it('that is not there is said in a sentence; a bar that no rule can read so is refused', async () => {
    const { call, shot } = await withPhoto('head-fire-face');
    await expect(call('calibration.findCard', { shotId: shot.id })).rejects.toThrow('card-not-found');
    await expect(call('calibration.findCard', { shotId: shot.id, barMm: 100 })).rejects.toThrow('invalid-input');
    await expect(call('calibration.findCard', { shotId: 'nothing' })).rejects.toThrow('not-found');
  }, 60_000);
});
