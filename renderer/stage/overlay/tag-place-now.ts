import { type Box, screenPoint, type XY } from '../../../shared-lib/geometry/spaces.ts';
import type { TagPlace } from '../../../shared-lib/geometry/tag-placement.ts';
import { toImage, toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { StillPicture } from '../still/still-marks.ts';

/** A tag's place in the still picture, moved along with the photo; its plate keeps its size. */
export function tagPlaceNow({ places, scene }: StillPicture, markId: string, view: View): TagPlace | null {
  const place = places.get(markId);
  if (!place) return null;
  const follow = ({ x, y }: XY): XY => toScreen(view, toImage(scene.view, screenPoint(x, y)));
  const { left, top, right, bottom } = place.box;
  const centre = follow({ x: (left + right) / 2, y: (top + bottom) / 2 });
  const half = { x: (right - left) / 2, y: (bottom - top) / 2 };
  return {
    id: place.id,
    box: { left: centre.x - half.x, top: centre.y - half.y, right: centre.x + half.x, bottom: centre.y + half.y },
    leader: place.leader && { from: follow(place.leader.from), to: follow(place.leader.to) },
  };
}

/** Where the tags of a still picture hang, in pixels of the photo. */
export function tagBoxesOnPhoto({ places, scene: { view } }: StillPicture): { markId: string; box: Box }[] {
  return [...places.values()].map(({ id, box }) => {
    const first = toImage(view, screenPoint(box.left, box.top));
    const last = toImage(view, screenPoint(box.right, box.bottom));
    return { markId: id, box: { left: first.x, top: first.y, right: last.x, bottom: last.y } };
  });
}
