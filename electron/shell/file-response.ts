import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { byteRange } from './byte-range.ts';

/** Fewer, larger reads: a photo of several megabytes crosses to the window in these pieces. */
const pieceBytes = 256 * 1024;

/**
 * Answers with a file, or with the part of it that a Range header asks for (RFC 9110, 14.2).
 *
 * @param range  the request's Range header, null without one
 * @param headers  what the answer carries besides type and length
 * @returns 200 or 206 with a stream; 416 for a range outside the file; 404 where there is no such file
 */
export async function fileResponse(
  path: string,
  range: string | null,
  headers: Readonly<Record<string, string>>,
): Promise<Response> {
  const file = await open(path).catch(() => null);
  const stat = await file?.stat();
  if (!file || !stat?.isFile()) {
    await file?.close();
    return notFound();
  }
  const part = byteRange(range, stat.size);
  if (part === 'unsatisfiable') {
    await file.close();
    return new Response(null, { status: 416, headers: { 'content-range': `bytes */${stat.size}` } });
  }
  const first = part?.first ?? 0;
  const last = part?.last ?? stat.size - 1;
  const partial = part ? { 'content-range': `bytes ${first}-${last}/${stat.size}` } : {};
  const answer = {
    status: part ? 206 : 200,
    headers: { ...headers, ...partial, 'accept-ranges': 'bytes', 'content-length': String(last - first + 1) },
  };
  if (stat.size === 0) {
    await file.close();
    return new Response(null, answer);
  }
  const stream = file.createReadStream({ start: first, end: last, highWaterMark: pieceBytes });
  return new Response(Readable.toWeb(stream), answer);
}

export function notFound(): Response {
  return refusal(404);
}

/** A refusal must never be remembered: the photo may be there a moment later. */
export function refusal(status: number): Response {
  return new Response(null, { status, headers: { 'cache-control': 'no-store' } });
}
