import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * Which colour stands behind which signal word: ANSI Z535.4 (red, orange, yellow, blue; as repeated in public pages).
 * Which sRGB values pass for these colours: published approximations of the ISO 3864-4 and 3864-2 colours (yellow RAL 1003,
 * orange RAL 2010, blue RAL 5005); red, RAL 3001, is from memory. The two standards' tints differ, so a panel is held to
 * the hue of its colour, not to its value.
 */
const isoColours = { red: '#9B2423', orange: '#D05D29', yellow: '#F9A800', blue: '#005387' } as const;
const colourOfWord = { danger: 'red', warning: 'orange', caution: 'yellow', notice: 'blue' } as const;
const words = ['danger', 'warning', 'caution', 'notice'] as const;

const root = join(import.meta.dirname, '../../..');
const tokens = readFileSync(join(root, 'renderer/ui/tokens.css'), 'utf8');
const hexOf = (token: string) => new RegExp(`--${token}:\\s*(#[0-9a-fA-F]{6});`).exec(tokens)?.[1] ?? '';

function channelsOf(hex: string): [number, number, number] {
  const channel = (at: number) => Number.parseInt(hex.slice(at, at + 2), 16) / 255;
  return [channel(1), channel(3), channel(5)];
}

/** Hue in degrees, as in HSL. */
function hueOf(hex: string): number {
  const [r, g, b] = channelsOf(hex);
  const most = Math.max(r, g, b);
  const spread = most - Math.min(r, g, b);
  const sixth = most === r ? ((g - b) / spread + 6) % 6 : most === g ? (b - r) / spread + 2 : (r - g) / spread + 4;
  return sixth * 60;
}

/** WCAG 2.2, relative luminance and contrast ratio. */
function contrast(a: string, b: string): number {
  const luminance = (hex: string) => {
    const [r, g, b] = channelsOf(hex).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
  };
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

describe('signal word panels', () => {
  it.each(words)('%s stands on the colour that the standard names, and no other panel is nearer to it', (word) => {
    const named = hueOf(isoColours[colourOfWord[word]]);
    const distance = (other: string) => Math.abs(((named - hueOf(hexOf(`z-${other}`)) + 540) % 360) - 180);
    expect(distance(word)).toBeLessThan(15);
    for (const other of words.filter((each) => each !== word)) expect(distance(other)).toBeGreaterThan(distance(word));
  });

  // Worked values: recomputed from WCAG 2.2 for black and white on ISO orange, white on ISO blue.
  it.each([
    ['#000000', '#D05D29', 5.28],
    ['#FFFFFF', '#D05D29', 3.977],
    ['#FFFFFF', '#005387', 8.117],
    ['#FFFFFF', '#767676', 4.542],
    ['#0000FF', '#FFFFFF', 8.59],
  ])('contrast of %s on %s is %d', (a, b, ratio) => {
    expect(Math.abs(contrast(a, b) - ratio)).toBeLessThan(0.005);
  });

  // WCAG 2.2: 4.5:1 for normal text (1.4.3), so also without its being large and bold.
  it.each(words)('%s can be read on its panel', (word) => {
    expect(contrast(hexOf(`z-${word}-ink`), hexOf(`z-${word}`))).toBeGreaterThanOrEqual(4.5);
  });
});

describe('safety colours stand nowhere but in cautions', () => {
  const mayUse = /^(renderer\/ui\/tokens\.css|renderer\/cautions\/|assets\/report\/sections\/cautions\.typ)/;
  const values = words.map((word) => hexOf(`z-${word}`).slice(1).toLowerCase());
  const files = ['renderer', 'assets/report', 'electron/shell', 'shared-lib'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.(css|tsx?|typ|html)$/.test(entry.name))
      .map((entry) => relative(root, join(entry.parentPath, entry.name))),
  );

  it('looks at all that draws', () => {
    expect(files.length).toBeGreaterThan(100);
    expect(files.filter((file) => mayUse.test(file)).length).toBeGreaterThan(1);
  });

  it('no other file names a colour of theirs', () => {
    const offenders = files.filter((file) => {
      const text = readFileSync(join(root, file), 'utf8').toLowerCase();
      return !mayUse.test(file) && (text.includes('--z-') || values.some((value) => text.includes(`#${value}`)));
    });
    expect(offenders).toEqual([]);
  });
});
