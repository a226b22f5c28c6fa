import { globSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, resolve } from 'node:path';
import { expect, it } from 'vitest';

const renderer = resolve(import.meta.dirname, '../../../../renderer');
const textOf = (path: string) => readFileSync(join(renderer, path), 'utf8');

/** `styles.pane` where `styles` is a style file without a `.pane`: the type checker does not know what a style file holds. */
function missingIn(screen: string): string[] {
  const code = textOf(screen);
  return [...code.matchAll(/import (\w+) from '(\.\S+\.module\.css)'/g)].flatMap(([, name = '', file = '']) => {
    const there = new Set(
      [...textOf(normalize(join(dirname(screen), file))).matchAll(/\.([A-Za-z][\w-]*)/g)].map(([, given]) => given),
    );
    const asked = [...code.matchAll(new RegExp(`(?<![\\w./])${name}\\.(\\w+)`, 'g'))].map(([, given = '']) => given);
    return asked.filter((given) => !there.has(given)).map((given) => `${screen}: ${name}.${given}`);
  });
}

it('names in a screen only styles that its style files hold', () => {
  const screens = globSync('**/*.tsx', { cwd: renderer });
  expect(screens.length).toBeGreaterThan(100);
  expect(screens.flatMap(missingIn)).toEqual([]);
});
