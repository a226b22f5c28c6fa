import type { Box, Size } from '../../../shared-lib/geometry/spaces.ts';
import type { View } from '../../../shared-lib/geometry/viewport.ts';
import type { Paint } from '../paint.ts';
import type { Decoded } from './decode.ts';

/** A decoded picture and the part of the original that it shows, in image pixels. */
export interface Piece {
  readonly decoded: Decoded;
  readonly part: Box;
}

export function wholePart(photo: Size): Box {
  return { left: -0.5, top: -0.5, right: photo.width - 0.5, bottom: photo.height - 0.5 };
}

/** Each screen pixel of the picture shows one image pixel as a square from here on, so that no detail is made up. */
const squaresFromScale = 6;

/** Draws the pieces, coarsest first, as far as `shown` (in screen pixels) reaches. */
export function paintPieces(
  context: Paint,
  pieces: readonly Piece[],
  view: View,
  shown: Box,
  quality: ImageSmoothingQuality,
): void {
  context.imageSmoothingEnabled = view.scale < squaresFromScale;
  context.imageSmoothingQuality = quality;
  // Whatever lies wholly under a finer piece need not be drawn.
  const first = pieces.findLastIndex((piece) => covers(piece, view, shown));
  for (const piece of pieces.slice(Math.max(0, first))) paintPiece(context, piece, view, shown);
}

function covers({ part }: Piece, view: View, shown: Box): boolean {
  return (
    part.left * view.scale + view.x <= shown.left &&
    part.top * view.scale + view.y <= shown.top &&
    part.right * view.scale + view.x >= shown.right &&
    part.bottom * view.scale + view.y >= shown.bottom
  );
}

/** Only the shown part is handed over: scaling pixels that nobody sees costs as much as those that are seen. */
function paintPiece(context: Paint, { decoded, part }: Piece, view: View, shown: Box): void {
  const left = Math.max(part.left, (shown.left - view.x) / view.scale);
  const top = Math.max(part.top, (shown.top - view.y) / view.scale);
  const right = Math.min(part.right, (shown.right - view.x) / view.scale);
  const bottom = Math.min(part.bottom, (shown.bottom - view.y) / view.scale);
  if (right <= left || bottom <= top) return;
  const perX = decoded.width / (part.right - part.left);
  const perY = decoded.height / (part.bottom - part.top);
  // Whole source pixels, so that the edge of the cut does not shift with the view.
  const fromX = Math.floor((left - part.left) * perX);
  const fromY = Math.floor((top - part.top) * perY);
  const toX = Math.min(decoded.width, Math.ceil((right - part.left) * perX));
  const toY = Math.min(decoded.height, Math.ceil((bottom - part.top) * perY));
  context.drawImage(
    decoded.image,
    fromX,
    fromY,
    toX - fromX,
    toY - fromY,
    (part.left + fromX / perX) * view.scale + view.x,
    (part.top + fromY / perY) * view.scale + view.y,
    ((toX - fromX) / perX) * view.scale,
    ((toY - fromY) / perY) * view.scale,
  );
}
