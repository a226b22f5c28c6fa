import type { Mark } from '../../shared-lib/model/mark.ts';
import type { StageScene, StageSnapshot } from './stage-scene.ts';
import { StillPictureMaker, stillServes } from './still/still-picture-maker.ts';

/** For this long marks may be missing at the rim, or their lines be too fat or thin, while the photo keeps moving. */
const lackingAtMostMs = 350;

/** When the picture of the still marks is drawn anew: at rest, on a change, and now and then in a long movement. */
export class MarksPicture {
  private lackingSinceMs: number | null = null;
  private readonly maker: StillPictureMaker;
  private readonly show: (part: Pick<StageSnapshot, 'isDrawn'> & Partial<StageSnapshot>) => void;

  constructor(show: (part: Pick<StageSnapshot, 'isDrawn'> & Partial<StageSnapshot>) => void) {
    this.show = show;
    this.maker = new StillPictureMaker(() => show({ picture: this.maker.picture, isDrawn: true }));
  }

  draw({ marks, tags, picked }: StageScene, { look, view, size, isMoving }: StageSnapshot): void {
    if (!look || size.width < 2) return;
    const tagOf = (mark: Mark) => (mark.findingId === null ? null : (tags.get(mark.findingId) ?? null));
    this.show({ isDrawn: false });
    this.maker.make({ marks, tagOf, picked, view, stage: size, look, pixelRatio: window.devicePixelRatio }, isMoving);
  }

  /** A short movement is over before a new picture of the marks would be ready, so only a long one gets one on its way. */
  follow(scene: StageScene, snapshot: StageSnapshot): void {
    const { picture } = this.maker;
    if (!picture || stillServes(picture, snapshot.view)) {
      this.lackingSinceMs = null;
      return;
    }
    const nowMs = performance.now();
    this.lackingSinceMs ??= nowMs;
    if (nowMs - this.lackingSinceMs > lackingAtMostMs && !this.maker.isWorking) this.draw(scene, snapshot);
  }

  rest(): void {
    this.lackingSinceMs = null;
  }

  close(): void {
    this.maker.close();
  }
}
