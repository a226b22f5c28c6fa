import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { _electron, type Page } from '@playwright/test';

/** Windows of the very Electron that the program's own tests run on, with nothing of the program in them. */
export interface StageWindows {
  readonly version: string;
  open(address: string): Promise<Page>;
  close(): Promise<void>;
}

const main = `import { app } from 'electron';
app.on('window-all-closed', () => undefined);

`;

export async function openStageWindows(): Promise<StageWindows> {
  // Plain JavaScript, for it runs before there is a project's own Node.
  const finder: { electronRuntime(): Promise<{ path: string }> } = await import(
    new URL('../../../electron/start/electron-runtime.mjs', import.meta.url).href
  );
  const runtime = await finder.electronRuntime();
  process.env.ELECTRON_OVERRIDE_DIST_PATH = dirname(runtime.path);
  const folder = mkdtempSync(join(tmpdir(), 'stage-windows-'));
  writeFileSync(join(folder, 'package.json'), '{"name":"stage-windows","type":"module","main":"main.mjs"}');
  writeFileSync(join(folder, 'main.mjs'), main);
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const app = await _electron.launch({
    executablePath: runtime.path,
    args: [folder, ...root],
    env: { ...(process.env as Record<string, string>), XDG_CONFIG_HOME: folder },
  });
  return {
    version: await app.evaluate(() => process.versions.electron ?? ''),
    open: async (address) => {
      const opened = app.waitForEvent('window');
      await app.evaluate(({ BrowserWindow }, url) => {
        const window = new BrowserWindow({
          width: 1366,
          height: 768,
          useContentSize: true,
          // One of two windows always lies under the other; both must draw.
          webPreferences: { backgroundThrottling: false },
        });
        void window.loadURL(url);
      }, address);
      const page = await opened;
      await page.waitForLoadState();
      return page;
    },
    close: async () => {
      await app.close();
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
