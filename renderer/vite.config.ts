import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const folder = import.meta.dirname;

/** Built for the one browser that ever shows it, and served by the shell from `app://witness/`. */
export default defineConfig({
  root: folder,
  logLevel: 'warn',
  base: '/',
  publicDir: false,
  plugins: [react()],
  build: {
    target: 'chrome130',
    outDir: `${folder}/../dist/renderer`,
    emptyOutDir: true,
    sourcemap: true,
    // The page's policy allows no font or picture that is written into a style sheet.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 2000,
  },
});
