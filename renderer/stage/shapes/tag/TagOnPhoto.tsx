import { Shape } from 'react-konva';
import type { TagPlace } from '../../../../shared-lib/geometry/tag-placement.ts';
import type { Tag } from '../../../../shared-lib/geometry/tag-plate.ts';
import type { Look } from '../../look.ts';
import { drawLeader, drawTag } from './draw-tag.ts';

interface TagOnPhotoProps {
  readonly tag: Tag;
  readonly place: TagPlace;
  readonly look: Look;
  readonly isPicked: boolean;
}

/** A finding's stamped tag on its leader, in screen pixels. */
export function TagOnPhoto({ tag, place, look, isPicked }: TagOnPhotoProps) {
  return (
    <Shape
      listening={false}
      sceneFunc={({ _context: context }) => {
        drawLeader(context, place.leader, look);
        drawTag(context, tag, look, isPicked, place.box.left, place.box.top);
      }}
    />
  );
}
