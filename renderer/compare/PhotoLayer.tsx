import type { Homography } from '../../shared-lib/calibration/homography.ts';
import type { Size } from '../../shared-lib/geometry/spaces.ts';
import type { View } from '../../shared-lib/geometry/viewport.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import styles from './ComparePane.module.css';
import { plainTransform, transformOf } from './frames.ts';
import type { EarlierPiece } from './use-earlier-picture.ts';

/** Longer side of the smaller picture of a photo. */
const screenEdge = 2048;

function screenSize({ width, height }: Size): Size {
  const shrink = Math.min(1, screenEdge / Math.max(width, height));
  return { width: Math.round(width * shrink), height: Math.round(height * shrink) };
}

interface PhotoLayerProps {
  readonly shot: Shot;
  readonly view: View;
  /** Into the frame that is looked at; left out where it is the photo's own. */
  readonly mapping?: Homography | undefined;
}

/** A photo as it was taken; every pixel of it once it is looked at closely enough. */
export function PhotoLayer({ shot, view, mapping }: PhotoLayerProps) {
  const drawn = screenSize(shot);
  const isClose = view.scale * window.devicePixelRatio > (1.3 * drawn.width) / shot.width && drawn.width < shot.width;
  const transform = mapping ? transformOf(drawn, shot, mapping, view) : plainTransform(drawn, shot, view);
  const style = { ...drawn, transform };
  return (
    <>
      <img className={styles.photo} src={`photo://screen/${shot.digest}`} alt="" draggable={false} style={style} />
      {isClose && (
        <img className={styles.photo} src={`photo://whole/${shot.digest}`} alt="" draggable={false} style={style} />
      )}
    </>
  );
}

interface PiecesLayerProps {
  readonly pieces: readonly EarlierPiece[];
  readonly view: View;
}

/** What the recorder has straightened, where it belongs on today's photo. */
export function PiecesLayer({ pieces, view }: PiecesLayerProps) {
  return pieces.map(({ url, part: { left, top, right, bottom } }) => (
    <img
      key={url}
      className={styles.photo}
      src={url}
      alt=""
      draggable={false}
      style={{
        left: view.x + view.scale * left,
        top: view.y + view.scale * top,
        width: view.scale * (right - left),
        height: view.scale * (bottom - top),
      }}
    />
  ));
}
