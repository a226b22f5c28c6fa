import { drawTagPlate, type Tag } from '../../../shared-lib/geometry/tag-plate.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';
import { drawNumber, drawPlate, rimReach } from '../shapes/tag/draw-tag.ts';

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
    const reach = rimReach * this.look.tagScale;
    const [x, y] = [whole(left), whole(top)];
    context.drawImage(stamp, x - reach, y - reach, stamp.width / this.pixelRatio, stamp.height / this.pixelRatio);
    context.save();
    context.translate(x, y);
    context.scale(this.look.tagScale, this.look.tagScale);
    drawNumber(context, tag, this.look);
    context.restore();
  }

  private stampOf(tag: Tag): OffscreenCanvas {
    const { width, height } = drawTagPlate(tag);
    const key = `${tag.tier} ${tag.state} ${width}`;
    const known = this.stamps.get(key);
    if (known) return known;
    const perUnit = this.pixelRatio * this.look.tagScale;
    const stamp = new OffscreenCanvas(
      Math.ceil((width + 2 * rimReach) * perUnit),
      Math.ceil((height + 2 * rimReach) * perUnit),
    );
    const context = stamp.getContext('2d', { willReadFrequently: true });
    if (context) {
      context.scale(perUnit, perUnit);
      context.translate(rimReach, rimReach);
      drawPlate(context, tag, this.look, false);
    }
    this.stamps.set(key, stamp);
    return stamp;
  }
}
