import type { Box, Size } from '../../../shared-lib/geometry/spaces.ts';
import { type View, visiblePart } from '../../../shared-lib/geometry/viewport.ts';
import { type Decoded, decode, release } from './decode.ts';
import { type Piece, wholePart } from './paint-photo.ts';

/** A rectangle of whole image pixels. */
export interface Region {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PhotoSources {
  /** A picture of about 2048 pixels, upright. */
  readonly screenUrl: string;
  /** The original's own bytes; null where the window cannot decode them. */
  readonly originalUrl: string | null;
  /** The address of a part of the original, its longest edge at most so many pixels; asked for large photos. */
  readonly regionUrl?: (region: Region, edge: number) => Promise<string> | string;
}

/** `none`: nothing to see yet; `screen`: the smaller picture; `full`: every pixel of the original that is shown. */
export type Sharpness = 'none' | 'screen' | 'full';

export interface PhotoStatus {
  readonly sharpness: Sharpness;
  readonly isLoading: boolean;
  /** The photo, or its full resolution, could not be shown. */
  readonly failed: 'photo' | 'full' | null;
}

/** Above this an original is not decoded whole: at 4 bytes a pixel it would take 200 MB and more. */
const wholeUpToPixels = 50_000_000;
const regionMargin = 0.15;
const longestRegionEdge = 4096;
/** The smaller picture may be blown up by this much before more is asked for. */
const coarseUpTo = 1.05;

/** Loads what the view needs, keeps what may be needed again, and tells when there is more to draw. */
export class PhotoPieces {
  private screen: Decoded | null = null;
  private whole: Decoded | null = null;
  private region: Piece | null = null;
  private wanted: { key: string; abort: AbortController } | null = null;
  private failed: PhotoStatus['failed'] = null;
  private isWholeHopeless: boolean;
  /** What could not be had is not asked for again and again. */
  private readonly hopeless = new Set<string>();
  private readonly life = new AbortController();
  private readonly photo: Size;
  private readonly sources: PhotoSources;
  private readonly onChange: () => void;

  constructor(photo: Size, sources: PhotoSources, onChange: () => void) {
    this.photo = photo;
    this.sources = sources;
    this.onChange = onChange;
    this.isWholeHopeless = sources.originalUrl === null || photo.width * photo.height > wholeUpToPixels;
    decode(sources.screenUrl, this.life.signal).then(
      (decoded) => {
        this.screen = decoded;
        this.onChange();
      },
      () => this.fail('photo'),
    );
  }

  /** What to draw at a scale of device pixels per image pixel, coarsest first: a smaller picture is drawn faster. */
  pieces(scale: number): Piece[] {
    const part = wholePart(this.photo);
    if (this.whole && this.isCoarse(scale)) return [{ decoded: this.whole, part }];
    const pieces: Piece[] = this.screen ? [{ decoded: this.screen, part }] : [];
    return this.region && this.isCoarse(scale) ? [...pieces, this.region] : pieces;
  }

  smaller(): Decoded | null {
    return this.screen;
  }

  status(view: View, stage: Size): PhotoStatus {
    const isFull = this.whole !== null || this.covers(visiblePart(view, this.photo, stage), view.scale);
    const isEnough = this.screen !== null && !this.isCoarse(view.scale);
    return {
      sharpness: isFull || isEnough ? 'full' : this.screen ? 'screen' : 'none',
      isLoading: this.wanted !== null || (this.screen === null && this.failed === null),
      failed: this.failed,
    };
  }

  /** Asks for full resolution where the smaller picture no longer is enough. `pixelRatio`: device pixels per CSS pixel. */
  want(view: View, stage: Size, pixelRatio: number): void {
    // The smaller picture is on its way; whether it is enough, shows when it is there.
    if (this.screen === null && this.failed === null) return;
    if (!this.isCoarse(view.scale * pixelRatio) || this.whole) return;
    if (!this.isWholeHopeless) this.wantWhole();
    else this.wantRegion(view, stage, pixelRatio);
  }

  close(): void {
    this.life.abort();
    this.wanted?.abort.abort();
    for (const decoded of [this.screen, this.whole, this.region?.decoded ?? null]) release(decoded);
    this.screen = null;
    this.whole = null;
    this.region = null;
  }

  private isCoarse(scale: number): boolean {
    return !this.screen || scale > (this.screen.width / this.photo.width) * coarseUpTo;
  }

  private wantWhole(): void {
    const url = this.sources.originalUrl;
    if (url === null) return;
    this.load('whole', async (signal) => {
      const decoded = await decode(url, signal);
      // A decoder that does not turn the picture, or reads another page of it, would put every mark in the wrong place.
      if (decoded.width !== this.photo.width || decoded.height !== this.photo.height) {
        release(decoded);
        throw new Error('other size');
      }
      this.whole = decoded;
    });
  }

  private wantRegion(view: View, stage: Size, pixelRatio: number): void {
    const { regionUrl } = this.sources;
    if (!regionUrl) return;
    const visible = visiblePart(view, this.photo, stage);
    if (visible.right <= visible.left || visible.bottom <= visible.top || this.covers(visible, view.scale)) return;
    const region = widened(visible, this.photo);
    const longest = Math.max(region.width, region.height);
    const edge = Math.max(16, Math.min(longestRegionEdge, longest, Math.ceil(longest * view.scale * pixelRatio)));
    this.load(`${region.x},${region.y},${region.width},${region.height}@${edge}`, async (signal) => {
      const decoded = await decode(await regionUrl(region, edge), signal);
      release(this.region?.decoded ?? null);
      const part = {
        left: region.x - 0.5,
        top: region.y - 0.5,
        right: region.x + region.width - 0.5,
        bottom: region.y + region.height - 0.5,
      };
      this.region = { decoded, part };
    });
  }

  private covers(visible: Box, scale: number): boolean {
    if (!this.region) return false;
    const { part, decoded } = this.region;
    const isInside =
      part.left <= visible.left &&
      part.top <= visible.top &&
      part.right >= visible.right &&
      part.bottom >= visible.bottom;
    const resolution = decoded.width / (part.right - part.left);
    return isInside && resolution >= Math.min(1, scale) * 0.95;
  }

  private load(key: string, run: (signal: AbortSignal) => Promise<void>): void {
    if (this.wanted?.key === key || this.hopeless.has(key)) return;
    this.wanted?.abort.abort();
    const abort = new AbortController();
    this.wanted = { key, abort };
    const signal = AbortSignal.any([abort.signal, this.life.signal]);
    run(signal).then(
      () => this.loaded(abort, null),
      () => {
        if (signal.aborted) return;
        this.hopeless.add(key);
        if (key === 'whole') this.isWholeHopeless = true;
        this.loaded(abort, this.isWholeHopeless && this.sources.regionUrl && key === 'whole' ? null : 'full');
      },
    );
    this.onChange();
  }

  private loaded(abort: AbortController, failed: PhotoStatus['failed']): void {
    if (this.wanted?.abort === abort) this.wanted = null;
    this.failed = failed;
    this.onChange();
  }

  private fail(failed: PhotoStatus['failed']): void {
    if (this.life.signal.aborted) return;
    this.failed = failed;
    this.onChange();
  }
}

function widened(visible: Box, photo: Size): Region {
  const marginX = (visible.right - visible.left) * regionMargin;
  const marginY = (visible.bottom - visible.top) * regionMargin;
  const x = Math.max(0, Math.floor(visible.left - marginX));
  const y = Math.max(0, Math.floor(visible.top - marginY));
  return {
    x,
    y,
    width: Math.min(photo.width, Math.ceil(visible.right + marginX)) - x,
    height: Math.min(photo.height, Math.ceil(visible.bottom + marginY)) - y,
  };
}
