import type { JpegFrame } from './jpeg-frame.ts';

/**
 * A picture that names the photo beside it. The typesetter takes a linked JPEG over as it is; an image of its own it would
 * decode whole, and keep, only to learn its size.
 */
export const linkedPhoto = (digest: string, { widthPx, heightPx }: JpegFrame): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}"><image width="${widthPx}" height="${heightPx}" href="${digest}.jpg"/></svg>`;

const embedded = /data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)/g;
const link = /href="([0-9a-f]{64})\.jpg"/;

/** Pages drawn as SVG hold every such picture as data: the photo's address under `photo://` takes its place. */
export const withPhotoAddresses = (svg: string): string =>
  svg.replaceAll(embedded, (data: string, base64: string) => {
    const digest = link.exec(Buffer.from(base64, 'base64').toString('utf8'))?.[1];
    return digest === undefined ? data : `photo://screen/${digest}`;
  });
