import { Shape } from 'react-konva';
import { placeLoupe } from '../../../shared-lib/geometry/loupe-placement.ts';
import { outlines } from '../../../shared-lib/geometry/outlines/index.ts';
import { type Size, screenPoint } from '../../../shared-lib/geometry/spaces.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { ImagePoint } from '../../../shared-lib/model/mark.ts';
import type { Look } from '../look.ts';
import { paintPieces } from '../photo/paint-photo.ts';
import type { PhotoPieces } from '../photo/photo-pieces.ts';
import { onScreen } from '../shapes/shape-props.ts';
import { drawStrokes } from '../shapes/strokes.ts';
import type { Draft } from '../tools/machine.ts';
import { drawCrossHair } from './CrossHair.tsx';

interface LoupeProps {
  /** The spot that is magnified: under the hand. */
  readonly at: ImagePoint;
  readonly pieces: PhotoPieces | null;
  readonly draft: Draft | null;
  readonly view: View;
  readonly size: Size;
  readonly look: Look;
}

const radiusPx = 84;
/** How much nearer than the stage itself; the stage asks for pixels by the same measure. */
export const magnification = 3;
const closest = 24;

/** A round look at the spot under the hand, away from it. */
export function Loupe({ at, pieces, draft, view, size, look }: LoupeProps) {
  const centre = placeLoupe(toScreen(view, at), size, radiusPx);
  const scale = Math.min(closest, view.scale * magnification);
  const near: View = { scale, x: centre.x - scale * at.x, y: centre.y - scale * at.y };
  const shown = {
    left: centre.x - radiusPx,
    top: centre.y - radiusPx,
    right: centre.x + radiusPx,
    bottom: centre.y + radiusPx,
  };
  return (
    <Shape
      listening={false}
      sceneFunc={({ _context: context }) => {
        const circle = new Path2D();
        circle.arc(centre.x, centre.y, radiusPx, 0, 2 * Math.PI);
        context.save();
        context.clip(circle);
        context.fillStyle = look.backdrop;
        context.fill(circle);
        paintPieces(context, pieces?.pieces(scale * window.devicePixelRatio) ?? [], near, shown, 'low');
        // A point's own ring would hide the very spot; the cross-hair says where it is.
        if (draft && draft.points.length > 1) {
          const strokes = outlines[draft.shape](onScreen(draft.points, near));
          drawStrokes(context, strokes, { look, state: null, isPicked: false });
        }
        drawCrossHair(context, screenPoint(centre.x, centre.y), look, 7, 24);
        context.restore();
        for (const [colour, width] of [
          [look.edge, 8],
          [look.halo, 6],
          [look.line, 3],
        ] as const) {
          context.strokeStyle = colour;
          context.lineWidth = width;
          context.stroke(circle);
        }
      }}
    />
  );
}
