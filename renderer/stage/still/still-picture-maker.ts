import { boxHolds } from '../../../shared-lib/geometry/plane.ts';
import type { Box } from '../../../shared-lib/geometry/spaces.ts';
import type { View } from '../../../shared-lib/geometry/viewport.ts';
import { PlateStamps } from './plate-stamps.ts';
import { drawStillPicture, type StillPicture, type StillScene } from './still-marks.ts';

/** The time a frame can spare while the photo is moving, and while it rests. */
const movingBudgetMs = 4;
const restingBudgetMs = 10;

/** Keeps one finished picture of the still marks and works on the next, a slice per frame. */
export class StillPictureMaker {
  picture: StillPicture | null = null;
  private job: Generator<void, StillPicture> | null = null;
  private stamps: PlateStamps | null = null;
  private frame = 0;
  private isMoving = false;
  private readonly onReady: () => void;

  constructor(onReady: () => void) {
    this.onReady = onReady;
  }

  get isWorking(): boolean {
    return this.job !== null;
  }

  /** Drops what is being made and begins anew. A few marks are ready at once, within this very call. */
  make(scene: StillScene, isMoving: boolean): void {
    if (!this.stamps?.fits(scene.look, scene.pixelRatio)) this.stamps = new PlateStamps(scene.look, scene.pixelRatio);
    this.job = drawStillPicture(scene, this.stamps);
    this.isMoving = isMoving;
    if (this.frame === 0) this.work(isMoving ? movingBudgetMs : restingBudgetMs);
  }

  close(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.job = null;
    this.picture?.bitmap.close();
    this.picture = null;
  }

  private work(budgetMs: number): void {
    const until = performance.now() + budgetMs;
    while (this.job) {
      const step = this.job.next();
      if (step.done) {
        this.job = null;
        this.picture?.bitmap.close();
        this.picture = step.value;
        this.onReady();
        return;
      }
      if (performance.now() >= until) {
        this.frame = requestAnimationFrame(() => {
          this.frame = 0;
          this.work(this.isMoving ? movingBudgetMs : restingBudgetMs);
        });
        return;
      }
    }
  }
}

/** Where the picture's cover lies now that the view has moved on. */
export function coverNow({ cover, scene }: StillPicture, view: View): Box {
  const ratio = view.scale / scene.view.scale;
  return {
    left: (cover.left - scene.view.x) * ratio + view.x,
    top: (cover.top - scene.view.y) * ratio + view.y,
    right: (cover.right - scene.view.x) * ratio + view.x,
    bottom: (cover.bottom - scene.view.y) * ratio + view.y,
  };
}

/** Whether a picture that only moves along still serves: nothing missing at the edge, lines neither fat nor thin. */
export function stillServes(picture: StillPicture, view: View): boolean {
  const ratio = view.scale / picture.scene.view.scale;
  const { stage } = picture.scene;
  const shown = { left: 0, top: 0, right: stage.width, bottom: stage.height };
  return ratio > 0.45 && ratio < 2.2 && boxHolds(coverNow(picture, view), shown);
}
