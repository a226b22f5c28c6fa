import { useSyncExternalStore } from 'react';
import { Layer, Stage } from 'react-konva';
import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import { DrawnLayers } from './DrawnLayers.tsx';
import { Overlay } from './overlay/Overlay.tsx';
import type { StageController } from './stage-controller.ts';

interface StageCanvasProps {
  readonly controller: StageController;
  readonly marks: readonly Mark[];
  readonly tags: ReadonlyMap<string, Tag>;
  readonly picked: string | null;
}

/**
 * Three layers: the photo, the still marks as one bitmap, and what is in hand. None listens: what lies under a hand is
 * found by geometry. What is in hand has a Konva stage of its own, since the other two are moved as finished pictures.
 */
export function StageCanvas({ controller, marks, tags, picked }: StageCanvasProps) {
  const size = useSyncExternalStore(controller.subscribe, () => controller.snapshot.size);
  return (
    <>
      <DrawnLayers controller={controller} />
      <Stage width={size.width} height={size.height} listening={false}>
        <Layer listening={false}>
          <Overlay controller={controller} marks={marks} tags={tags} picked={picked} />
        </Layer>
      </Stage>
    </>
  );
}
