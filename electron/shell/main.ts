import { join } from 'node:path';
import { app, BrowserWindow, Menu } from 'electron';
import { setupAppProtocol } from './app-protocol.ts';
import { AskedAhead } from './asked-ahead.ts';
import { setupCalls, tellWindows } from './calls.ts';
import { createDialogs } from './dialogs.ts';
import { setupFolders } from './folders.ts';
import { setupMenu } from './menu.ts';
import { setupPhotoProtocol } from './photo-protocol.ts';
import { recorderNode } from './recorder-node.ts';
import { RecorderProcess } from './recorder-process.ts';
import { registerSchemes } from './schemes.ts';
import { setupSecurity, setupSessionSecurity } from './security.ts';
import { openWindow } from './window.ts';

// Settled before the app is ready: schemes, the lock, and that Electron makes no menu of its own, only to be replaced.
registerSchemes();
setupSecurity();
Menu.setApplicationMenu(null);
const { dataFolder, codeFolder } = setupFolders(process.argv.slice(1));

if (app.requestSingleInstanceLock()) {
  const appFolder = app.getAppPath();
  const recorder = new RecorderProcess({
    node: recorderNode(appFolder, app.isPackaged ? process.resourcesPath : null),
    script: join(appFolder, 'dist/recorder/main.js'),
    dataFolder,
    codeFolder,
    onEvent: (event) => {
      if (event.event === 'changed') ahead.forget();
      tellWindows(event);
    },
  });
  const ahead = new AskedAhead();
  // It opens the folder, and answers the first questions, while the window is still being made.
  recorder.start();
  ahead.ask(recorder);
  // Not awaited: an ES module that waits here for the app holds the app back.
  app.whenReady().then(() => open(appFolder, recorder, ahead), fail);
} else {
  app.quit();
}

function open(appFolder: string, recorder: RecorderProcess, ahead: AskedAhead): void {
  const dialogs = createDialogs((offer) => recorder.offer(offer));

  setupSessionSecurity();
  setupAppProtocol(join(appFolder, 'dist/renderer'));
  setupPhotoProtocol(recorder);
  setupCalls(recorder, dialogs, ahead);
  setupLife(recorder, appFolder);
  openWindow(appFolder);
  setupMenu(tellWindows);
}

/** Second starts, closing, and an end that lets the recorder finish first. */
function setupLife(recorder: RecorderProcess, appFolder: string): void {
  app.on('second-instance', () => {
    const [window] = BrowserWindow.getAllWindows();
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('activate', () => {
    if (BrowserWindow.getAllWindows().length === 0) openWindow(appFolder);
  });
  app.on('window-all-closed', () => app.quit());
  let isStopped = false;
  app.on('will-quit', (event) => {
    if (isStopped) return;
    event.preventDefault();
    void recorder.stop().then(() => {
      isStopped = true;
      app.quit();
    });
  });
}

function fail(error: unknown): void {
  console.error(error);
  app.exit(1);
}
