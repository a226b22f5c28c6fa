import { screenPoint } from '../../../shared-lib/geometry/spaces.ts';
import { toImage, type View } from '../../../shared-lib/geometry/viewport.ts';
import { Place } from '../../support/app/place.ts';
import type { Stage } from './stage.ts';

type Pixel = readonly [x: number, y: number];

/** The cross-hair of the stage, led by arrow keys as a hand without a mouse leads it. */
export class CrossHair extends Place {
  readonly #stage: Stage;
  #at: Pixel | null = null;

  constructor(program: ConstructorParameters<typeof Place>[0], stage: Stage) {
    super(program);
    this.#stage = stage;
  }

  /** A press at each of these pixels of the photo, as near as a step of the cross-hair comes. */
  async pressAt(...pixels: readonly Pixel[]): Promise<void> {
    for (const pixel of pixels) {
      await this.#leadTo(pixel);
      await this.page.keyboard.press('Enter');
    }
  }

  async #leadTo([x, y]: Pixel): Promise<void> {
    const [fromX, fromY] = this.#at ?? (await this.#appear());
    const step = Math.max(1, 1 / (await this.#view()).scale);
    const [right, down] = [Math.round((x - fromX) / step), Math.round((y - fromY) / step)];
    await this.#step(right, 'ArrowLeft', 'ArrowRight');
    await this.#step(down, 'ArrowUp', 'ArrowDown');
    this.#at = [fromX + right * step, fromY + down * step];
  }

  async #step(count: number, back: string, on: string): Promise<void> {
    const key = count < 0 ? back : on;
    const steps = Math.abs(count);
    for (let far = 0; far < Math.floor(steps / 10); far += 1) await this.page.keyboard.press(`Shift+${key}`);
    for (let near = 0; near < steps % 10; near += 1) await this.page.keyboard.press(key);
  }

  /** The first press brings it, into the middle of the stage. */
  async #appear(): Promise<Pixel> {
    const box = await this.#stage.element.boundingBox();
    const middle = screenPoint((box?.width ?? 0) / 2, (box?.height ?? 0) / 2);
    const { x, y } = toImage(await this.#view(), middle);
    await this.page.keyboard.press('Enter');
    return [x, y];
  }

  async #view(): Promise<View> {
    return JSON.parse((await this.#stage.element.getAttribute('data-view')) ?? 'null') as View;
  }
}
