import { expect, type Locator } from '@playwright/test';
import { Place } from '../../support/app/place.ts';
import { FindingCard } from './finding-card.ts';
import { Stage } from './stage.ts';

/** A visit's page, photos and report. */
export class Visit extends Place {
  readonly standing: Locator = this.page.getByRole('complementary', { name: 'Standing' });
  readonly notebook: Locator = this.page.getByRole('article', { name: 'Notebook page' });

  async visitId(): Promise<string> {
    const [floor] = await this.program.call('machine.floor', {});
    if (!floor?.visitId) throw new Error('No visit is open.');
    return floor.visitId;
  }

  async takePhotos(paths: readonly string[]): Promise<Locator> {
    await this.program.chooseFiles(paths);
    await this.button(/^Take in photos/).click();
    return this.page.getByRole('region', { name: 'Photos taken in' });
  }

  async toPhotos(): Promise<Stage> {
    await this.#turnTo('Photos');
    const stage = new Stage(this.program);
    await stage.isReady();
    return stage;
  }

  async toPage(): Promise<void> {
    await this.#turnTo('Page');
  }

  async #turnTo(page: string): Promise<void> {
    await this.page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: page, exact: true }).click();
  }

  async openFinding(number: number): Promise<FindingCard> {
    await this.standing.getByRole('button', { name: new RegExp(`^Finding ${number}:`) }).click();
    return new FindingCard(this.program, number);
  }

  async printReport(path: string): Promise<void> {
    await this.#turnTo('Report');
    await this.program.saveAs(path);
    await this.button('Write the draft as PDF').click();
    await expect(this.page.getByText(/written to/)).toBeVisible({ timeout: 30_000 });
  }
}
