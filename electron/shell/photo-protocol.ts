import { protocol } from 'electron';
import { fileResponse, notFound, refusal } from './file-response.ts';
import type { RecorderProcess } from './recorder-process.ts';
import { appOrigin } from './schemes.ts';

/** Every address names its bytes by their digest, so what was fetched once is right for good. */
const photoHeaders = {
  'cache-control': 'public, max-age=31536000, immutable',
  'access-control-allow-origin': appOrigin,
  'x-content-type-options': 'nosniff',
};

/** Serves `photo://`: the recorder says which file of its store is meant, and only that is read. */
export function setupPhotoProtocol(recorder: RecorderProcess): void {
  protocol.handle('photo', async (request) => {
    if (request.method !== 'GET') return refusal(405);
    const answer = await recorder.locatePhoto(request.url);
    if (answer === 'recorder-stopped') return refusal(503);
    if (answer.path === null || answer.mediaType === null) return notFound();
    const headers = { ...photoHeaders, 'content-type': answer.mediaType };
    return fileResponse(answer.path, request.headers.get('range'), headers);
  });
}
