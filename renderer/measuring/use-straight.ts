import { useMemo } from 'react';
import type { CalibratedPlane } from '../../shared-lib/measuring/calibrated-plane.ts';
import { useAnswer } from '../api/queries.ts';
import type { PhotoSources } from '../stage/photo/photo-pieces.ts';
import { type StraightMapping, straightMapping } from './straight.ts';

export interface Straight {
  readonly plane: CalibratedPlane;
  readonly mapping: StraightMapping;
  /** What the stage shows instead of the photo. */
  readonly shot: { readonly id: string; readonly digest: string; readonly width: number; readonly height: number };
  readonly sources: PhotoSources;
}

/** The straightened picture of a face, asked for while one is wanted. */
export function useStraight(plane: CalibratedPlane | null) {
  const answer = useAnswer('photo.straighten', { calibrationId: plane?.id ?? '' }, { when: plane !== null });
  const picture = plane === null ? undefined : answer.data;
  const straight = useMemo((): Straight | null => {
    const mapping = plane && picture ? straightMapping(picture, plane) : null;
    if (!plane || !picture || !mapping) return null;
    const { url, width, height } = picture;
    return {
      plane,
      mapping,
      shot: { id: `${plane.shotId} straight ${plane.id}`, digest: url, width, height },
      sources: { screenUrl: url, originalUrl: url },
    };
  }, [plane, picture]);
  return { straight, isMaking: plane !== null && answer.isPending, error: plane === null ? null : answer.error };
}
