import { drawTagPlate, type Tag } from '../../../shared-lib/geometry/tag-plate.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';
import { drawNumber, drawPlate, rimReachPx } from '../shapes/tag/draw-tag.ts';

/** Plates drawn once and then stamped: hundreds of tags have a few dozen plates between them. */
export class PlateStamps {
  private readonly stamps = new Map<string, OffscreenCanvas>();
  readonly look: Look;
  private readonly pixelRatio: number;

  constructor(look: Look, pixelRatio: number) {
    this.look = look;
    this.pixelRatio = pixelRatio;
  }

  fits(look: Look, pixelRatio: number): boolean {
    return this.look === look && this.pixelRatio === pixelRatio;
  }

  /** Stamps a tag with its upper left corner at (left, top), on whole device pixels so that its lines stay crisp. */
  stamp(context: Paint, tag: Tag, left: number, top: number): void {
    const stamp = this.stampOf(tag);
    const whole = (value: number) => Math.round(value * this.pixelRatio) / this.pixelRatio;
    const [x, y] = [whole(left), whole(top)];
    context.drawImage(
      stamp,
      x - rimReachPx,
      y - rimReachPx,
      stamp.width / this.pixelRatio,
      stamp.height / this.pixelRatio,
    );
    context.save();
    context.translate(x, y);
    drawNumber(context, tag, this.look);
    context.restore();
  }

  private stampOf(tag: Tag): OffscreenCanvas {
    const { width, height } = drawTagPlate(tag);
    const key = `${tag.tier} ${tag.state} ${width}`;
    const known = this.stamps.get(key);
    if (known) return known;
    const stamp = new OffscreenCanvas(
      Math.ceil((width + 2 * rimReachPx) * this.pixelRatio),
      Math.ceil((height + 2 * rimReachPx) * this.pixelRatio),
    );
    const context = stamp.getContext('2d', { willReadFrequently: true });
    if (context) {
      context.scale(this.pixelRatio, this.pixelRatio);
      context.translate(rimReachPx, rimReachPx);
      drawPlate(context, tag, this.look, false);
    }
    this.stamps.set(key, stamp);
    return stamp;
  }
}
