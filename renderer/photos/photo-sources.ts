import type { Shot } from '../../shared-lib/model/shot.ts';
import { call } from '../api/client.ts';
import type { PhotoSources } from '../stage/photo/photo-pieces.ts';

/** Where the pixels of a shot come from; only what the recorder locates in its store is ever served. */
export function photoSources(shot: Pick<Shot, 'id' | 'digest'>): PhotoSources {
  return {
    screenUrl: `photo://screen/${shot.digest}`,
    originalUrl: `photo://whole/${shot.digest}`,
    regionUrl: async (region, edge) => (await call('shot.region', { id: shot.id, ...region, edge })).url,
  };
}
