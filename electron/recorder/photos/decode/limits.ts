import { damaged, RefusedPicture } from './job.ts';

export const mostMegapixels = 120;
export const mostPixels = mostMegapixels * 1_000_000;
/** Above this the stage asks for regions instead of the whole picture. */
export const wholePictureMegapixels = 50;

/**
 * More bytes in memory per byte of file than any photograph has: a camera's JPEG stays under 60, a flat drawing in PNG
 * reaches 1000. Only asked of pictures that are over the limit anyway, to tell a trap from a stitched panorama.
 */
const bombRatio = 200;

/** What a header claims, before anything is decoded. */
export interface Claim {
  readonly width: number;
  readonly height: number;
  readonly bytesPerPixel: number;
}

/** @throws RefusedPicture for no pixels, or more than can be taken in */
export const checkClaim = ({ width, height, bytesPerPixel }: Claim, fileBytes: number): void => {
  if (!(width >= 1 && height >= 1)) throw damaged('header');
  const pixels = width * height;
  if (pixels <= mostPixels) return;
  const megapixels = Math.round(pixels / 1_000_000);
  if ((pixels * bytesPerPixel) / fileBytes > bombRatio) throw new RefusedPicture({ code: 'photo-bomb', megapixels });
  throw new RefusedPicture({ code: 'photo-too-large', megapixels, most: mostMegapixels });
};
