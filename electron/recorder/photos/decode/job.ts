import type { ReadableKind } from '../sniff.ts';
import type { Rectangle } from './orientation.ts';

/** What the recorder asks of a decoding child. Paths are the store's own. */
export type Job =
  | {
      readonly kind: 'take';
      readonly path: string;
      readonly picture: ReadableKind;
      readonly thumbPath: string;
      readonly screenPath: string;
    }
  /** A whole upright JPEG of a picture that the window cannot show by itself. */
  | { readonly kind: 'full'; readonly path: string; readonly picture: ReadableKind; readonly outPath: string }
  /** An upright pyramid of tiles, from which regions are cut quickly. */
  | { readonly kind: 'working'; readonly path: string; readonly picture: ReadableKind; readonly outPath: string }
  | {
      readonly kind: 'region';
      readonly workingPath: string;
      readonly rectangle: Rectangle;
      readonly edge: number;
      readonly outPath: string;
    };

/** What is found in a picture that can be taken in. Width and height are upright. */
export interface Taken {
  readonly width: number;
  readonly height: number;
  /** EXIF orientation still to be applied to the bytes; 1 where the container's own turning is applied by every decoder. */
  readonly orientation: number;
  readonly camera: string | null;
  readonly takenLocal: string | null;
  readonly takenZoneOffsetMin: number | null;
  readonly remark: string | null;
}

export type DamageReason = 'header' | 'cut-off' | 'not-decodable' | 'size-differs';

export type Refusal =
  | { readonly code: 'photo-damaged'; readonly why: DamageReason }
  | { readonly code: 'photo-too-large'; readonly megapixels: number; readonly most: number }
  | { readonly code: 'photo-bomb'; readonly megapixels: number }
  | { readonly code: 'photo-kind-not-read'; readonly kind: string }
  | { readonly code: 'disk-full' };

export type JobAnswer =
  | { readonly ok: true; readonly taken: Taken | null }
  | { readonly ok: false; readonly refusal: Refusal }
  /** Not a refusal: a bug, or the machine; the text is for the log. */
  | { readonly ok: false; readonly fault: string };

/** Thrown inside the child; becomes the answer. */
export class RefusedPicture extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal, cause?: unknown) {
    super(refusal.code, cause === undefined ? {} : { cause });
    this.refusal = refusal;
  }
}

export const damaged = (why: DamageReason, cause?: unknown): RefusedPicture =>
  new RefusedPicture({ code: 'photo-damaged', why }, cause);
