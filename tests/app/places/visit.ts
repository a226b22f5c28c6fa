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
    return this.stage();
  }

  /** The photo that stands open. */
  async stage(): Promise<Stage> {
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

  /** The card that has opened by itself. */
  async card(number: number): Promise<FindingCard> {
    const card = new FindingCard(this.program, number);
    await card.element.waitFor();
    return card;
  }

  /** A new finding from the page; its card is open. */
  async writeFinding(number: number): Promise<FindingCard> {
    await this.toPage();
    await this.standing.getByRole('button', { name: 'Write a finding' }).click();
    return this.card(number);
  }

  /** Issues the report into a file; the words beside the button say that it was written. */
  async issueReport(path: string): Promise<void> {
    await this.#turnTo('Report');
    await this.program.saveAs(path);
    const issued = this.page.getByRole('region', { name: 'Issued' });
    const before = await issued.locator('strong').count();
    await issued.getByRole('button', { name: /^Issue/ }).click();
    await expect(issued.locator('strong')).toHaveCount(before + 1, { timeout: 30_000 });
  }

  /** Drops a file of the disk on the report's page, and returns what is said of it. */
  async verifyByDropping(path: string): Promise<Locator> {
    await this.#turnTo('Report');
    // A file that came through a real file field has a place on the disk, as a dropped one has; a made-up one has none.
    await this.page.evaluate(() => {
      const field = document.createElement('input');
      field.type = 'file';
      field.dataset.dropped = '';
      document.body.append(field);
    });
    const field = this.page.locator('input[data-dropped]');
    await field.setInputFiles(path);
    await field.evaluate((element) => {
      const data = new DataTransfer();
      for (const file of (element as HTMLInputElement).files ?? []) data.items.add(file);
      element.remove();
      for (const kind of ['dragenter', 'dragover', 'drop'])
        window.dispatchEvent(new DragEvent(kind, { dataTransfer: data, cancelable: true }));
    });
    return this.page.getByRole('region', { name: 'Check a report' }).getByRole('status');
  }

  /** A page of the report as the window shows it, counted from 1. */
  leaf(number: number): Locator {
    return this.page.getByRole('img', { name: new RegExp(`^Page ${number} of `) });
  }

  async printReport(path: string): Promise<void> {
    await this.#turnTo('Report');
    await this.program.saveAs(path);
    await this.button('Write the draft as PDF').click();
    await expect(this.page.getByText(/written to/)).toBeVisible({ timeout: 30_000 });
  }
}
