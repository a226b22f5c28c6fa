import { defineConfig } from 'vite';

const folder = import.meta.dirname;

/** Two files: the main process as an ES module, and the preload as the CommonJS that a sandboxed page needs. */
const bundle = (entry: string, format: 'es' | 'cjs', name: string) => ({
  consumer: 'server' as const,
  resolve: { noExternal: true as const, external: ['electron'], builtins: [/^node:/] },
  build: {
    target: 'node20',
    outDir: `${folder}/../../dist/shell`,
    emptyOutDir: false,
    minify: false,
    sourcemap: true,
    ssr: `${folder}/${entry}`,
    rolldownOptions: { output: { format, entryFileNames: name, chunkFileNames: '[name].js' } },
  },
});

export default defineConfig({
  root: folder,
  logLevel: 'warn',
  environments: {
    main: bundle('main.ts', 'es', 'main.js'),
    preload: bundle('preload.ts', 'cjs', 'preload.cjs'),
  },
  builder: {
    async buildApp(builder) {
      for (const environment of Object.values(builder.environments)) {
        if (['main', 'preload'].includes(environment.name)) await builder.build(environment);
      }
    },
  },
});
