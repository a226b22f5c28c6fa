import { readFileSync } from 'node:fs';
import { extname, join, normalize, sep } from 'node:path';
import { type ProtocolRequest, type ProtocolResponse, protocol } from 'electron';
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

/**
 * Serves the built window from `app://witness/`.
 *
 * By the older of Electron's two calls, deprecated as it is: `protocol.handle` speaks in fetch's Request and Response, and
 * Node's fetch would be loaded while the first screen waits for its page.
 */
export function setupAppProtocol(folder: string): void {
  protocol.registerBufferProtocol('app', (request, answer) => answer(answerTo(request, folder)));
}

function answerTo({ method, url }: ProtocolRequest, folder: string): ProtocolResponse {
  const path = method === 'GET' ? fileFor(folder, url) : null;
  const mediaType = path === null ? undefined : mediaTypes[extname(path)];
  const bytes = path === null || mediaType === undefined ? null : bytesOf(path);
  if (bytes === null || mediaType === undefined) return { statusCode: 404, data: Buffer.alloc(0) };
  return {
    data: bytes,
    headers: {
      'content-type': mediaType,
      'content-security-policy': contentSecurityPolicy,
      'x-content-type-options': 'nosniff',
    },
  };
}

/** Whole, and waited for: the files are small, and the first screen needs each of them at once. */
function bytesOf(path: string): Buffer | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}

/** @returns null for an address that is not one of ours, or that leads out of the folder */
function fileFor(folder: string, address: string): string | null {
  if (!address.startsWith(`${appOrigin}/`)) return null;
  const { pathname } = new URL(address);
  const path = normalize(join(folder, pathname === '/' ? 'index.html' : decodeURIComponent(pathname)));
  return path.startsWith(folder + sep) ? path : null;
}
