import { outlineOf, unsureOf } from '../../../shared-lib/geometry/outlines/index.ts';
import type { Stroke } from '../../../shared-lib/geometry/outlines/outline.ts';
import { boundingBox, boxesMeet, grownBox } from '../../../shared-lib/geometry/plane.ts';
import type { Box, Size } from '../../../shared-lib/geometry/spaces.ts';
import { placeEachTag, type TagPlace } from '../../../shared-lib/geometry/tag-placement.ts';
import type { Tag } from '../../../shared-lib/geometry/tag-plate.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { Look } from '../look.ts';
import { drawStrokes } from '../shapes/strokes.ts';
import { drawLeader, tagSize } from '../shapes/tag/draw-tag.ts';
import type { PlateStamps } from './plate-stamps.ts';
import { rimOf } from './rim.ts';

/** What a picture of the still marks is made from. */
export interface StillScene {
  readonly marks: readonly Mark[];
  readonly tagOf: (mark: Mark) => Tag | null;
  /** Drawn on the overlay instead. */
  readonly picked: string | null;
  readonly view: View;
  readonly stage: Size;
  readonly look: Look;
  readonly pixelRatio: number;
}

/** All marks that are not in hand, as one bitmap that pans and zooms with the photo until the next one is ready. */
export interface StillPicture {
  readonly bitmap: ImageBitmap;
  /** What it covers, in the screen pixels of its scene's view: the stage and a rim round it. */
  readonly cover: Box;
  readonly scene: StillScene;
  readonly drawn: ReadonlySet<Mark>;
  readonly places: ReadonlyMap<string, TagPlace>;
}

/** So many marks or tags are drawn before a frame may come between. */
const batch = 8;
/** The farthest that a mark or its rim of strokes reaches beyond its points, in screen pixels. */
const reachPx = 30;

interface Drawable {
  readonly mark: Mark;
  readonly tag: Tag | null;
  readonly strokes: readonly Stroke[];
}

/**
 * Draws the picture bit by bit: every `yield` is a chance to let a frame through. Hundreds of marks take longer than a
 * frame, and a hand on the photo must not wait for them.
 */
export function* drawStillPicture(scene: StillScene, stamps: PlateStamps): Generator<void, StillPicture> {
  const cover = coverOf(scene);
  const drawables: Drawable[] = [];
  for (const mark of scene.marks) {
    const points = mark.points.map((point) => toScreen(scene.view, point));
    const box = boundingBox(points);
    if (!box || !boxesMeet(grownBox(box, reachPx), cover)) continue;
    drawables.push({ mark, tag: scene.tagOf(mark), strokes: outlineOf(mark.shape, points, unsureOf(mark)) });
    if (drawables.length % 32 === 0) yield;
  }
  yield;
  const places = yield* placeAll(drawables, scene, cover);
  yield;

  const canvas = new OffscreenCanvas(
    Math.max(1, Math.ceil((cover.right - cover.left) * scene.pixelRatio)),
    Math.max(1, Math.ceil((cover.bottom - cover.top) * scene.pixelRatio)),
  );
  // Drawn on the processor: a bitmap is handed over whole at the end, and pieces of it can be waited for.
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No canvas to draw marks on.');
  const toBitmap = () =>
    context.setTransform(
      scene.pixelRatio,
      0,
      0,
      scene.pixelRatio,
      -cover.left * scene.pixelRatio,
      -cover.top * scene.pixelRatio,
    );
  // Reading a pixel waits for all that was drawn, which else would be put off and come in one piece.
  const finishSoFar = (): void => void context.getImageData(0, 0, 1, 1);
  let count = 0;
  toBitmap();
  const still = drawables.filter(({ mark }) => mark.id !== scene.picked);
  for (const { tag, strokes } of still) {
    drawStrokes(context, strokes, { look: scene.look, state: tag?.state ?? null, isPicked: false });
    count += 1;
    if (count % batch === 0) yield finishSoFar();
  }
  for (const { mark } of still) drawLeader(context, places.get(mark.id)?.leader ?? null, scene.look);
  for (const { mark, tag } of still) {
    const place = places.get(mark.id);
    if (!tag || !place) continue;
    stamps.stamp(context, tag, place.box.left, place.box.top);
    count += 1;
    if (count % batch === 0) yield finishSoFar();
  }
  return { bitmap: canvas.transferToImageBitmap(), cover, scene, drawn: new Set(scene.marks), places };
}

function coverOf({ stage, pixelRatio }: StillScene): Box {
  const { x, y } = rimOf(stage, pixelRatio);
  return { left: -x, top: -y, right: stage.width + x, bottom: stage.height + y };
}

/** Marks on the stage keep their tags on it; those in the rim get theirs in the rim, ready to be pulled into sight. */
function* placeAll(
  drawables: readonly Drawable[],
  { stage, view, picked, look }: StillScene,
  cover: Box,
): Generator<void, Map<string, TagPlace>> {
  const wishes = drawables
    .flatMap(({ mark, tag, strokes }) => (tag ? [{ mark, tag, strokes }] : []))
    .sort((a, b) => Number(b.mark.id === picked) - Number(a.mark.id === picked) || a.tag.number - b.tag.number)
    .map(({ mark, tag, strokes }) => ({
      id: mark.id,
      strokes,
      size: tagSize(tag, look),
      at: mark.tagAt && toScreen(view, mark.tagAt),
    }));
  const places = new Map<string, TagPlace>();
  const shown = { left: 0, top: 0, right: stage.width, bottom: stage.height };
  for (const [id, place] of placeEachTag(wishes, shown)) {
    places.set(id, place);
    if (places.size % batch === 0) yield;
  }
  const taken = [...places.values()].map(({ box }) => box);
  const rest = wishes.filter(({ id }) => !places.has(id));
  for (const [id, place] of placeEachTag(rest, cover, taken)) {
    places.set(id, place);
    if (places.size % batch === 0) yield;
  }
  return places;
}
