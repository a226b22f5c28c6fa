import { app, type IpcMainInvokeEvent, session } from 'electron';
import { appOrigin } from './schemes.ts';

/** Denies everything a page of this program never needs, for every page that may ever come to be. */
export function setupSecurity(): void {
  app.on('web-contents-created', (_, contents) => {
    contents.on('will-frame-navigate', (event) => event.preventDefault());
    contents.on('will-redirect', (event) => event.preventDefault());
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
}

/** The same for the session; it exists once the app is ready. */
export function setupSessionSecurity(): void {
  const { defaultSession } = session;
  defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  defaultSession.setPermissionCheckHandler(() => false);
  defaultSession.setDevicePermissionHandler(() => false);
  // The program has no business on any network; the policy of the page says so too.
  defaultSession.webRequest.onBeforeRequest({ urls: ['http://*/*', 'https://*/*', 'ws://*/*', 'wss://*/*'] }, (_, go) =>
    go({ cancel: true }),
  );
}

/** True for the main frame of a page that came from the program itself. */
export function isOurs(event: IpcMainInvokeEvent): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame === event.sender.mainFrame && frame.url.startsWith(`${appOrigin}/`);
}
