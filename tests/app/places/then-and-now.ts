import { expect, type Locator } from '@playwright/test';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import { Place } from '../../support/app/place.ts';

type Side = 'Then' | 'Now';

/** An earlier photo under one of today's. Points are pixels of today's photo; the pane's own view says where they lie. */
export class ThenAndNow extends Place {
  readonly panel: Locator = this.page.getByRole('complementary', { name: 'Then and now' });
  readonly before: Locator = this.page.getByRole('application', { name: 'Then' });
  readonly now: Locator = this.page.getByRole('application', { name: 'Now' });
  readonly fit: Locator = this.panel.getByRole('region', { name: 'How they lie over each other' });
  readonly growth: Locator = this.panel.getByRole('region', { name: 'What became of it' });
  readonly oldMarks: Locator = this.panel.getByRole('region', { name: 'Marks of then' });

  point(number: number, side: Side): Locator {
    return this.page.getByRole('button', { name: `Point ${number}, ${side.toLowerCase()}`, exact: true });
  }

  async keep(): Promise<void> {
    await this.button('They match: keep').click();
    await expect(this.button('They match: keep')).toBeHidden();
  }

  async way(name: string): Promise<void> {
    await this.page.getByRole('radio', { name }).check({ force: true });
  }

  async onScreen(pane: Locator, x: number, y: number): Promise<{ x: number; y: number }> {
    const view = JSON.parse((await pane.getAttribute('data-view')) ?? 'null') as View;
    const box = await pane.boundingBox();
    const point = toScreen(view, { x, y });
    return { x: point.x + (box?.x ?? 0), y: point.y + (box?.y ?? 0) };
  }

  /** Drags a matched point by its middle to a pixel of the pane's photo. */
  async dragPoint(number: number, side: Side, x: number, y: number): Promise<void> {
    const from = await this.point(number, side).boundingBox();
    if (!from) throw new Error(`point ${number} is not shown`);
    const to = await this.onScreen(side === 'Then' ? this.before : this.now, x, y);
    await this.page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await this.page.mouse.down();
    await this.page.mouse.move(to.x, to.y, { steps: 8 });
    await this.page.mouse.up();
  }
}
