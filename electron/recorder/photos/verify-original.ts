import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import { PhotoStore } from './store.ts';

/** Whether an original's bytes are still those that were taken in. */
export const verifyOriginal = async (dataFolder: string, digest: string): Promise<'whole' | 'missing' | 'altered'> => {
  const path = await new PhotoStore(dataFolder).locate(digest, 'original');
  if (path === null) return 'missing';
  const hash = createHash('sha256');
  await pipeline(createReadStream(path, { highWaterMark: 1 << 20 }), hash);
  return hash.digest('hex') === digest ? 'whole' : 'altered';
};
