import { defineConfig } from 'vite';
import { ownPrograms } from './own-files.ts';

const folder = import.meta.dirname;
const entries = ['main', ...ownPrograms];

/**
 * The recorder as the shell starts it: a few files in place of nine hundred modules, which were most of its start. Tests
 * and command line run the TypeScript itself; `own-files.ts` says what differs.
 */
export default defineConfig({
  root: folder,
  logLevel: 'warn',
  ssr: {
    noExternal: true,
    // Native, or with files of their own beside their code. All but the first are loaded when they are needed.
    external: ['better-sqlite3', 'sharp', '@myriaddreamin/typst-ts-node-compiler', 'libheif-js', 'pdfjs-dist'],
  },
  build: {
    target: 'node22',
    outDir: `${folder}/../../dist/recorder`,
    emptyOutDir: true,
    minify: false,
    sourcemap: true,
    ssr: true,
    rolldownOptions: {
      input: Object.fromEntries(entries.map((name) => [name, `${folder}/${name}.ts`])),
      // Shared code stands beside `main`, where `own-files.ts` expects itself to be.
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js', comments: { jsdoc: false } },
    },
  },
});
