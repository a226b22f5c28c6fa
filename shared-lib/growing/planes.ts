import type { Box, Size } from '../geometry/spaces.ts';

/**
 * A part of a photo in three opponent colours, made smaller by whole blocks: brightness (luma), red against green, yellow
 * against blue. Rust, scale, soot and bare metal part in the last two where they do not in the first.
 */
export interface ColourPlanes extends Size {
  /** Where the first pixel's upper left corner lies in the upright original, and how many of its pixels go to one here. */
  readonly left: number;
  readonly top: number;
  readonly factor: number;
  readonly light: Float32Array;
  readonly red: Float32Array;
  readonly yellow: Float32Array;
}

/** Gives a part of the photo at a size that can be looked at. */
export type Look = (box: Box, factor: number) => ColourPlanes;
