import type Konva from 'konva';
import { memo, useEffect, useRef, useSyncExternalStore } from 'react';
import { Layer, Shape, Stage } from 'react-konva';
import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import { Overlay } from './overlay/Overlay.tsx';
import type { Paint } from './paint.ts';
import { paintPieces } from './photo/paint-photo.ts';
import type { StageController } from './stage-controller.ts';
import type { StageSnapshot } from './stage-scene.ts';
import { coverNow } from './still/still-picture-maker.ts';

interface StageCanvasProps {
  readonly controller: StageController;
  readonly marks: readonly Mark[];
  readonly tags: ReadonlyMap<string, Tag>;
  readonly picked: string | null;
}

/**
 * Three layers: the photo, the still marks as one bitmap, and what is in hand. No layer has a transform and none
 * listens: everything is drawn where the view puts it, and what lies under a hand is found by geometry.
 */
export function StageCanvas({ controller, marks, tags, picked }: StageCanvasProps) {
  const size = useSyncExternalStore(controller.subscribe, () => controller.snapshot.size);
  return (
    <Stage width={size.width} height={size.height} listening={false}>
      <PaintedLayer controller={controller} paint={paintPhoto} isChanged={photoIsChanged} />
      <PaintedLayer controller={controller} paint={paintStill} isChanged={stillIsChanged} />
      <Layer listening={false}>
        <Overlay controller={controller} marks={marks} tags={tags} picked={picked} />
      </Layer>
    </Stage>
  );
}

interface PaintedLayerProps {
  readonly controller: StageController;
  readonly paint: (context: Paint, controller: StageController) => void;
  readonly isChanged: (before: StageSnapshot, now: StageSnapshot) => boolean;
}

/** A layer that is painted anew when what it shows has changed, and never because something else has. */
const PaintedLayer = memo(function PaintedLayer({ controller, paint, isChanged }: PaintedLayerProps) {
  const layer = useRef<Konva.Layer>(null);
  useEffect(() => {
    let painted = controller.snapshot;
    layer.current?.batchDraw();
    return controller.subscribe(() => {
      if (isChanged(painted, controller.snapshot)) layer.current?.batchDraw();
      painted = controller.snapshot;
    });
  }, [controller, isChanged]);
  return (
    <Layer ref={layer} listening={false}>
      <Shape listening={false} sceneFunc={({ _context }) => paint(_context, controller)} />
    </Layer>
  );
});

function photoIsChanged(before: StageSnapshot, now: StageSnapshot): boolean {
  return before.view !== now.view || before.photoChanges !== now.photoChanges || before.isMoving !== now.isMoving;
}

function paintPhoto(context: Paint, { snapshot, pieces }: StageController): void {
  const shown = { left: 0, top: 0, right: snapshot.size.width, bottom: snapshot.size.height };
  const needed = pieces?.pieces(snapshot.view.scale * window.devicePixelRatio) ?? [];
  paintPieces(context, needed, snapshot.view, shown, snapshot.isMoving ? 'low' : 'high');
}

function stillIsChanged(before: StageSnapshot, now: StageSnapshot): boolean {
  return before.view !== now.view || before.picture !== now.picture;
}

function paintStill(context: Paint, { snapshot: { picture, view } }: StageController): void {
  if (!picture) return;
  const { left, top, right, bottom } = coverNow(picture, view);
  context.drawImage(picture.bitmap, left, top, right - left, bottom - top);
}
