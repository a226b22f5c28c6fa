import type Konva from 'konva';
import { useEffect, useRef, useSyncExternalStore } from 'react';
import { Layer, Shape, Stage } from 'react-konva';
import { boxHolds } from '../../shared-lib/geometry/plane.ts';
import type { Box } from '../../shared-lib/geometry/spaces.ts';
import { panBy, type View } from '../../shared-lib/geometry/viewport.ts';
import styles from './PhotoStage.module.css';
import type { Paint } from './paint.ts';
import { type Piece, paintPieces } from './photo/paint-photo.ts';
import type { StageController } from './stage-controller.ts';
import type { StageSnapshot } from './stage-scene.ts';
import { rimOf } from './still/rim.ts';
import { coverNow } from './still/still-picture-maker.ts';

/**
 * Scaling down well takes a tenth of a second, so it waits until the hand has been still for a while: the next pull
 * must not stumble over it.
 */
const polishAfterMs = 500;
/** Source pixels per screen pixel from which on a quick scaling is seen to be rough. */
const roughFrom = 1.25;

interface DrawnLayersProps {
  readonly controller: StageController;
}

/**
 * The photo and the still marks, drawn somewhat beyond the stage's edges. While the photo moves nothing is drawn anew:
 * the finished layers are shifted and scaled by the compositor, over the smaller picture, which fills what they leave
 * bare. At rest, and when a new picture of the marks is ready, both are drawn where they now belong.
 */
export function DrawnLayers({ controller }: DrawnLayersProps) {
  const size = useSyncExternalStore(controller.subscribe, () => controller.snapshot.size);
  const rim = rimOf(size, window.devicePixelRatio);
  const under = useRef<HTMLCanvasElement>(null);
  const shifted = useRef<HTMLDivElement>(null);
  const photo = useRef<Konva.Layer>(null);
  const still = useRef<Konva.Layer>(null);
  const drawnView = useRef<View>(controller.snapshot.view);
  const quality = useRef<ImageSmoothingQuality>('low');

  useEffect(() => {
    let before: StageSnapshot | null = null;
    let polishTimer: ReturnType<typeof setTimeout> | undefined;
    function polish(): void {
      const pieces = controller.pieces?.pieces(drawnView.current.scale * window.devicePixelRatio) ?? [];
      if (!gainsByQuality(pieces, drawnView.current.scale * window.devicePixelRatio)) return;
      quality.current = 'high';
      photo.current?.draw();
    }
    function follow(): void {
      const now = controller.snapshot;
      if (isDrawnAnew(before, now)) {
        drawnView.current = now.view;
        quality.current = 'low';
        photo.current?.draw();
        still.current?.draw();
        if (before?.photoChanges !== now.photoChanges && under.current) copySmaller(under.current, controller);
      }
      if (before?.view !== now.view || before.isMoving !== now.isMoving || isDrawnAnew(before, now)) {
        if (shifted.current) shifted.current.style.transform = transformBetween(drawnView.current, now.view);
        const isBare = !boxHolds(shiftedBox(drawnView.current, now), {
          left: 0,
          top: 0,
          right: now.size.width,
          bottom: now.size.height,
        });
        if (under.current) placeUnder(under.current, controller, isBare);
      }
      if (before?.view !== now.view || before.photoChanges !== now.photoChanges || before.isMoving !== now.isMoving) {
        clearTimeout(polishTimer);
        if (!now.isMoving) polishTimer = setTimeout(polish, polishAfterMs);
      }
      before = now;
    }
    follow();
    const leave = controller.subscribe(follow);
    return () => {
      clearTimeout(polishTimer);
      leave();
    };
  }, [controller]);

  const inRim = (view: View) => panBy(view, rim.x, rim.y);
  function paintPhoto(context: Paint): void {
    const view = drawnView.current;
    const pieces = controller.pieces?.pieces(view.scale * window.devicePixelRatio) ?? [];
    const shown = { left: 0, top: 0, right: size.width + 2 * rim.x, bottom: size.height + 2 * rim.y };
    paintPieces(context, pieces, inRim(view), shown, quality.current);
  }
  function paintStill(context: Paint): void {
    const { picture } = controller.snapshot;
    if (!picture) return;
    const { left, top, right, bottom } = coverNow(picture, drawnView.current);
    context.drawImage(picture.bitmap, left + rim.x, top + rim.y, right - left, bottom - top);
  }

  return (
    <>
      <div ref={shifted} className={styles.shifted}>
        <div style={{ position: 'absolute', left: -rim.x, top: -rim.y }}>
          <Stage width={size.width + 2 * rim.x} height={size.height + 2 * rim.y} listening={false}>
            <Layer ref={photo} listening={false}>
              <Shape listening={false} sceneFunc={({ _context }) => paintPhoto(_context)} />
            </Layer>
            <Layer ref={still} listening={false}>
              <Shape listening={false} sceneFunc={({ _context }) => paintStill(_context)} />
            </Layer>
          </Stage>
        </div>
      </div>
      <canvas ref={under} className={styles.under} width={1} height={1} />
    </>
  );
}

function gainsByQuality(pieces: readonly Piece[], scale: number): boolean {
  return pieces.some(({ decoded, part }) => decoded.width / (part.right - part.left) / scale >= roughFrom);
}

function isDrawnAnew(before: StageSnapshot | null, now: StageSnapshot): boolean {
  if (!before) return true;
  const isSettled = !now.isMoving && (before.isMoving || before.view !== now.view);
  return isSettled || before.picture !== now.picture || before.photoChanges !== now.photoChanges;
}

function transformBetween(from: View, to: View): string {
  const ratio = to.scale / from.scale;
  if (ratio === 1 && from.x === to.x && from.y === to.y) return '';
  const [x, y] = [to.x - from.x * ratio, to.y - from.y * ratio];
  // Shifted by whole pixels the layers are copied, not blurred.
  if (ratio === 1) return `translate(${Math.round(x)}px, ${Math.round(y)}px)`;
  return `matrix(${ratio}, 0, 0, ${ratio}, ${x}, ${y})`;
}

function copySmaller(canvas: HTMLCanvasElement, controller: StageController): void {
  const smaller = controller.pieces?.smaller() ?? null;
  if (!smaller) {
    canvas.width = 1;
    return;
  }
  if (canvas.width === smaller.width && canvas.height === smaller.height) return;
  canvas.width = smaller.width;
  canvas.height = smaller.height;
  canvas.getContext('2d')?.drawImage(smaller.image, 0, 0);
}

/** Where the layers, with their rim, lie on the stage now. */
function shiftedBox(drawn: View, { size, view }: StageSnapshot): Box {
  const { x, y } = rimOf(size, window.devicePixelRatio);
  const ratio = view.scale / drawn.scale;
  const [dx, dy] = [view.x - drawn.x * ratio, view.y - drawn.y * ratio];
  return {
    left: -x * ratio + dx,
    top: -y * ratio + dy,
    right: (size.width + x) * ratio + dx,
    bottom: (size.height + y) * ratio + dy,
  };
}

/** Only while the layers leave some of the stage bare: else they hide it, and it would be composed for nothing. */
function placeUnder(canvas: HTMLCanvasElement, { snapshot: { view }, photo }: StageController, isBare: boolean): void {
  canvas.style.visibility = isBare && canvas.width > 1 ? 'visible' : 'hidden';
  if (!isBare) return;
  const [x, y] = [view.x - view.scale / 2, view.y - view.scale / 2];
  const [scaleX, scaleY] = [(view.scale * photo.width) / canvas.width, (view.scale * photo.height) / canvas.height];
  canvas.style.transform = `matrix(${scaleX}, 0, 0, ${scaleY}, ${x}, ${y})`;
}
