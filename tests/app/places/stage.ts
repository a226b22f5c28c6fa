import type { Locator } from '@playwright/test';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import { Place } from '../../support/app/place.ts';

/** The photo on the stage. Points are pixels of the upright original; the program's own viewport says where they lie. */
export class Stage extends Place {
  readonly element: Locator = this.page.getByRole('application');

  async isReady(): Promise<void> {
    await this.element.waitFor();
    await this.page.waitForFunction(() => {
      const stage = document.querySelector<HTMLElement>('[role=application]');
      return stage?.dataset.view !== undefined && stage.dataset.moving === 'false';
    });
  }

  async onScreen(x: number, y: number): Promise<{ x: number; y: number }> {
    const view = JSON.parse((await this.element.getAttribute('data-view')) ?? 'null') as View;
    const box = await this.element.boundingBox();
    const point = toScreen(view, { x, y });
    return { x: point.x + (box?.x ?? 0), y: point.y + (box?.y ?? 0) };
  }

  async pickTool(name: string): Promise<void> {
    await this.page
      .getByRole('toolbar')
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .click();
  }

  /** Presses at the first point, passes the others, lets go at the last. */
  async drag(...points: readonly (readonly [number, number])[]): Promise<void> {
    const [first, ...rest] = await Promise.all(points.map(([x, y]) => this.onScreen(x, y)));
    if (!first) return;
    await this.page.mouse.move(first.x, first.y);
    await this.page.mouse.down();
    for (const { x, y } of rest) await this.page.mouse.move(x, y, { steps: 6 });
    await this.page.mouse.up();
  }

  async tap(x: number, y: number): Promise<void> {
    const at = await this.onScreen(x, y);
    await this.page.mouse.click(at.x, at.y);
  }
}
