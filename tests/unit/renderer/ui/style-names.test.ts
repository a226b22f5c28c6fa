import { globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const renderer = join(import.meta.dirname, '../../../../renderer');

interface TextFile {
  readonly path: string;
  readonly text: string;
}

const filesLike = (pattern: string): TextFile[] =>
  globSync(pattern, { cwd: renderer }).map((path) => ({ path, text: readFileSync(join(renderer, path), 'utf8') }));

const allIn = (text: string, pattern: RegExp): string[] => [...text.matchAll(pattern)].map(([, found]) => found ?? '');

const withoutRemarks = (css: string): string => css.replace(/\/\*[\s\S]*?\*\//g, '');

/** The classes that a style file declares. */
const classesIn = (css: string): ReadonlySet<string> =>
  new Set(allIn(withoutRemarks(css).replace(/url\([^)]*\)|"[^"]*"|:global\([^)]*\)/g, ''), /\.(-?[A-Za-z_][\w-]*)/g));

const code = filesLike('**/*.{ts,tsx}');
const modules = new Map(filesLike('**/*.module.css').map(({ path, text }) => [path, classesIn(text)]));

/** What a file asks of its style files: a class by its name, or by a word of the data (`styles[look]`). */
const asked = code.flatMap(({ path, text }) =>
  [...text.matchAll(/^import (\w+) from '(\.[^']*\.module\.css)';$/gm)].map(([, styles = '', from = '']) => ({
    by: path,
    of: join(dirname(path), from),
    names: allIn(text, new RegExp(`(?<!/)\\b${styles}\\.(\\w+)`, 'g')),
    byWord: new RegExp(`\\b${styles}\\[`).test(text),
  })),
);

// The bundler and the browser say nothing of a name that is not there: its element just stands bare.
describe('the names of styles', () => {
  it('are declared where they are asked for', () => {
    expect(asked.flatMap(({ names }) => names).length).toBeGreaterThan(500);
    const bare = asked.flatMap(({ by, of, names }) =>
      names.filter((name) => !modules.get(of)?.has(name)).map((name) => `${name}, asked for by ${by}`),
    );
    expect(bare).toEqual([]);
  });

  it('are asked for where they are declared', () => {
    const idle = [...modules].flatMap(([path, names]) => {
      const asking = asked.filter(({ of }) => of === path);
      if (asking.some(({ byWord }) => byWord)) return [];
      return [...names].filter((name) => !asking.some((each) => each.names.includes(name))).map((name) => [path, name]);
    });
    expect(idle).toEqual([]);
  });

  it('of values are declared somewhere', () => {
    const css = filesLike('**/*.css').map(({ text }) => withoutRemarks(text));
    const declared = new Set([
      ...css.flatMap((text) => allIn(text, /(--[\w-]+)\s*:/g)),
      ...code.flatMap(({ text }) => allIn(text, /'(--[\w-]+)'/g)),
    ]);
    const used = css.flatMap((text) => allIn(text, /var\((--[\w-]+)/g));
    expect(used.length).toBeGreaterThan(500);
    expect(used.filter((name) => !declared.has(name))).toEqual([]);
  });
});
