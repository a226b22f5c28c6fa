import { join } from 'node:path';
import { app, BrowserWindow, screen } from 'electron';
import { appOrigin } from './schemes.ts';
import { readWindowState, type WindowState, writeWindowState } from './window-state.ts';

/** The paper of the bench theme, so that nothing flashes before the page is drawn. */
const paper = '#FBF9F4';
const smallest = { minWidth: 1024, minHeight: 680 };
const firstSize = { width: 1366, height: 768 };
/** A page that keeps crashing is left alone after this many times, rather than reloaded for ever. */
const mostReloads = 3;

export function openWindow(appFolder: string): BrowserWindow {
  const stateFile = join(app.getPath('userData'), 'window.json');
  const state = onSomeScreen(readWindowState(stateFile));
  const window = new BrowserWindow({
    ...firstSize,
    ...(state ? { x: state.x, y: state.y, width: state.width, height: state.height } : {}),
    ...smallest,
    title: 'Witness Mark',
    backgroundColor: paper,
    show: false,
    autoHideMenuBar: true,
    webPreferences: {
      preload: join(appFolder, 'dist/shell/preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      webviewTag: false,
      devTools: !app.isPackaged,
      // Its dictionaries would be fetched from the network.
      spellcheck: false,
    },
  });
  if (state?.isMaximized) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on('close', () => {
    writeWindowState(stateFile, { ...window.getNormalBounds(), isMaximized: window.isMaximized() });
  });
  reloadAfterCrash(window);
  void window.loadURL(`${appOrigin}/`);
  return window;
}

/** A screen may have been unplugged since: the middle of the window must be on one that is there. */
function onSomeScreen(state: WindowState | null): WindowState | null {
  if (state === null) return null;
  const x = state.x + state.width / 2;
  const y = state.y + state.height / 2;
  const isSeen = screen
    .getAllDisplays()
    .some(
      ({ bounds }) => x >= bounds.x && x < bounds.x + bounds.width && y >= bounds.y && y < bounds.y + bounds.height,
    );
  return isSeen ? state : null;
}

/** The record is with the recorder, so a page that crashed loses nothing by being drawn again. */
function reloadAfterCrash(window: BrowserWindow): void {
  let reloads = 0;
  window.webContents.on('render-process-gone', (_, { reason }) => {
    if (reason === 'clean-exit' || reloads >= mostReloads) return;
    reloads += 1;
    window.webContents.reload();
  });
}
