import { protocol } from 'electron';

/** The window's own address. */
export const appOrigin = 'app://witness';

/** Must run before the app is ready. `photo` is a scheme of its own, so that a policy can allow pictures alone. */
export function registerSchemes(): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, stream: true };
  protocol.registerSchemesAsPrivileged([
    // Compiled once: the next start reads the code cache.
    { scheme: 'app', privileges: { ...privileges, codeCache: true } },
    // A canvas that drew a photo must still be readable: hence CORS.
    { scheme: 'photo', privileges: { ...privileges, corsEnabled: true } },
  ]);
}
