import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import { protocol } from 'electron';
import { notFound } from './file-response.ts';
import { appOrigin } from './schemes.ts';

const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.woff2': 'font/woff2',
};

/** Nothing from outside, no inline script, no eval. Blob and data addresses are for pasted and drawn pictures. */
const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' photo: blob: data:",
  "connect-src 'self' photo:",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Serves the built window from `app://witness/`. */
export function setupAppProtocol(folder: string): void {
  protocol.handle('app', async (request) => {
    const path = request.method === 'GET' ? fileFor(folder, request.url) : null;
    const mediaType = path === null ? undefined : mediaTypes[extname(path)];
    if (path === null || mediaType === undefined) return notFound();
    // Whole at once: they are small, and the first screen waits for each of them.
    const bytes = await readFile(path).catch(() => null);
    if (bytes === null) return notFound();
    return new Response(bytes, {
      headers: {
        'content-type': mediaType,
        'content-length': String(bytes.byteLength),
        'content-security-policy': contentSecurityPolicy,
        'x-content-type-options': 'nosniff',
      },
    });
  });
}

/** @returns null for an address that is not one of ours, or that leads out of the folder */
function fileFor(folder: string, address: string): string | null {
  if (!address.startsWith(`${appOrigin}/`)) return null;
  const { pathname } = new URL(address);
  const path = normalize(join(folder, pathname === '/' ? 'index.html' : decodeURIComponent(pathname)));
  return path.startsWith(folder + sep) ? path : null;
}
