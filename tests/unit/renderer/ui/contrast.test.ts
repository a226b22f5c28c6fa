import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * Contrast of every pair of tokens that is drawn on screen.
 *
 * Formula: WCAG 2.2 (W3C Recommendation, 2024-12-12), 'relative luminance' and 'contrast ratio'. Floors: 7:1 for text is
 * success criterion 1.4.6 (AAA), 3:1 for the edges of controls is 1.4.11. Signal words are large bold text of an outside
 * standard's colours: 4.5:1, criterion 1.4.6 for large text.
 */
type Tokens = ReadonlyMap<string, string>;

const css = readFileSync(join(import.meta.dirname, '../../../../renderer/ui/tokens.css'), 'utf8');

function tokensOf(selector: string): Map<string, string> {
  const found = new Map<string, string>();
  const blocks = [...css.matchAll(/([^{}]+)\{([^{}]*)\}/g)].filter(
    ([, head]) => head?.replace(/\/\*[\s\S]*?\*\//g, '').trim() === selector,
  );
  for (const [, , body = ''] of blocks) {
    for (const [, name = '', value = ''] of body.matchAll(/(--[\w-]+):\s*([^;]+);/g)) found.set(name, value.trim());
  }
  return found;
}

const bench = tokensOf(':root');
const themes: readonly (readonly [string, Tokens])[] = [
  ['bench', bench],
  ['sunlight', new Map([...bench, ...tokensOf('[data-theme="sunlight"]')])],
  ['night', new Map([...bench, ...tokensOf('[data-theme="night"]')])],
];

/** WCAG 2.2: linearise each channel of sRGB, then weigh them. */
function relativeLuminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [relativeLuminance(a), relativeLuminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

function colour(tokens: Tokens, name: string): string {
  const value = tokens.get(`--${name}`) ?? '';
  expect(value, `--${name}`).toMatch(/^#[0-9a-fA-F]{6}$/);
  return value;
}

const surfaces = ['paper', 'leaf', 'bench', 'plate', 'blue-wash'] as const;
const textPairs: readonly (readonly [string, string])[] = [
  ...surfaces.flatMap((surface) => ['ink', 'ink-soft', 'blue'].map((text) => [text, surface] as const)),
  ['scribe', 'blue'],
  ['scribe-soft', 'blue'],
  ['scribe', 'blue-deep'],
  ['scribe-soft', 'blue-deep'],
  ['paper', 'ink'],
  ['leaf', 'ink'],
  ['stage-ink', 'stage'],
];
const edgePairs: readonly (readonly [string, string])[] = surfaces.map((surface) => ['line', surface]);
const signalWords = ['danger', 'warning', 'caution', 'notice'] as const;

describe.each(themes)('in the %s theme', (_name, tokens) => {
  it.each(textPairs)('%s on %s can be read: 7:1', (text, surface) => {
    expect(contrast(colour(tokens, text), colour(tokens, surface))).toBeGreaterThanOrEqual(7);
  });

  it.each(edgePairs)('the edge of a control, %s on %s, can be seen: 3:1', (line, surface) => {
    expect(contrast(colour(tokens, line), colour(tokens, surface))).toBeGreaterThanOrEqual(3);
  });

  it.each(signalWords)('the signal word %s can be read: 4.5:1', (word) => {
    expect(contrast(colour(tokens, `z-${word}-ink`), colour(tokens, `z-${word}`))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(['brush', 'grain'])('the %s of a surface stays under 10 %% so that it costs no contrast', (texture) => {
    const value = tokens.get(`--${texture}`) ?? '';
    const alpha = value === 'transparent' ? 0 : Number(/rgba\([^)]*,\s*([\d.]+)\)/.exec(value)?.[1]);
    expect(alpha).toBeLessThan(0.1);
  });
});

describe('the formula', () => {
  // W3C, Understanding SC 1.4.3: black on white is 21:1, a colour on itself 1:1; #767676 on white is the known 4.54:1.
  it.each([
    ['#000000', '#FFFFFF', 21],
    ['#22368F', '#22368F', 1],
    ['#767676', '#FFFFFF', 4.54],
  ])('%s on %s is %d:1', (a, b, ratio) => {
    expect(contrast(a, b)).toBeCloseTo(ratio, 2);
  });
});
