import { expect, type Locator } from '@playwright/test';
import { Place } from '../../support/app/place.ts';

/** The choices of a visit and the statements that are read back. */
export class Choices extends Place {
  readonly table: Locator = this.page.getByRole('region', { name: 'The choices' });
  readonly decisions: Locator = this.page.getByRole('complementary', { name: 'Decisions' });
  readonly statement: Locator = this.page.getByRole('region', { name: 'The statement' });

  async open(): Promise<void> {
    await this.page.keyboard.press('Control+4');
    await this.table.waitFor();
  }

  /** Writes a choice under its own name, and what it does to each finding. */
  async write(name: string, does: Readonly<Record<number, string>>): Promise<void> {
    const columns = this.table.getByRole('columnheader');
    const before = await columns.allInnerTexts();
    await this.page.getByRole('button', { name: 'Write a choice' }).click();
    await expect(columns).toHaveCount(before.length + 1);
    const heads = (await columns.allInnerTexts()).map((head) => head.split('\n')[0]?.trim() ?? '');
    const old = before.map((head) => head.split('\n')[0]?.trim());
    const given = heads.find((head) => !old.includes(head)) ?? '';
    await this.button(`Costs and work of “${given}”`).click();
    const field = this.page.getByRole('dialog', { name: given }).getByRole('textbox', { name: 'Name' });
    await field.fill(name);
    await field.press('Enter');
    await this.button(`Close: ${name}`).click();
    for (const [number, words] of Object.entries(does))
      await this.table.getByRole('combobox', { name: `“${name}”: finding ${number}` }).selectOption({ label: words });
  }

  async readBack(choice: string): Promise<void> {
    await this.button(`Read back “${choice}”`).click();
    await this.statement.waitFor();
  }

  async readFinding(number: number): Promise<void> {
    await this.decisions.getByRole('button', { name: new RegExp(`^Finding ${number}:`) }).click();
    await expect(this.statement.getByRole('heading', { name: /^Read this back/ })).toBeVisible();
  }

  /** Ends the statement by its key, and completes it where it asks. */
  async end(key: '1' | '2' | '3' | '4', completed = ''): Promise<void> {
    await this.page.keyboard.press(key);
    if (completed !== '') await this.page.keyboard.type(completed);
  }

  async sign(): Promise<void> {
    const box = this.statement.getByRole('img', { name: /^Where .* signs$/ });
    await box.scrollIntoViewIfNeeded();
    const at = await box.boundingBox();
    if (at === null) throw new Error('there is nowhere to sign');
    await this.page.mouse.move(at.x + 30, at.y + 40);
    await this.page.mouse.down();
    await this.page.mouse.move(at.x + 120, at.y + 15, { steps: 4 });
    await this.page.mouse.move(at.x + 200, at.y + 60, { steps: 4 });
    await this.page.mouse.up();
  }

  async keep(): Promise<void> {
    await this.statement.getByRole('button', { name: 'Keep it as it was read' }).click();
    await this.table.waitFor();
  }
}
