import { expect, type Locator } from '@playwright/test';
import { Place } from '../../support/app/place.ts';

/** The sheets of a visit, by keyboard alone. */
export class Sheets extends Place {
  readonly taken: Locator = this.page.getByRole('complementary', { name: 'Taken in this visit' });

  async open(name: string): Promise<Sheet> {
    await this.page.keyboard.press('Control+3');
    const search = this.page.getByRole('searchbox', { name: 'Find a sheet' });
    await search.waitFor();
    await this.#tabTo(search);
    await this.page.keyboard.type(name);
    await expect(this.page.getByRole('region', { name: 'Found' }).getByRole('button').first()).toHaveText(name);
    await this.page.keyboard.press('Enter');
    const sheet = new Sheet(this.program, name);
    await sheet.element.waitFor();
    return sheet;
  }

  async #tabTo(wanted: Locator): Promise<void> {
    for (let step = 0; step < 80; step += 1) {
      if (await wanted.evaluate((element) => element === document.activeElement)) return;
      await this.page.keyboard.press('Tab');
    }
    throw new Error('The keyboard does not get there.');
  }
}

/** One sheet that lies open. */
export class Sheet extends Place {
  readonly element: Locator;

  constructor(program: ConstructorParameters<typeof Place>[0], name: string) {
    super(program);
    this.element = this.page.getByRole('article', { name, exact: true });
  }

  /** Where it is taken, when the sheet does not know: the first place found by these words. */
  async place(words: string): Promise<void> {
    await expect(this.element.getByRole('textbox', { name: 'Where is it?' })).toBeFocused();
    await this.page.keyboard.type(words);
    await this.element.getByRole('region', { name: 'Where' }).getByRole('listitem').first().waitFor();
    await this.page.keyboard.press('Tab');
    await this.page.keyboard.press('Enter');
  }

  /** Somewhere else than the sheet supposes. */
  async changePlace(words: string): Promise<void> {
    await this.element.getByRole('button', { name: 'Change where' }).click();
    await this.element.getByRole('textbox', { name: 'Where is it?' }).fill(words);
    await this.element.getByRole('region', { name: 'Where' }).getByRole('listitem').first().getByRole('button').click();
    await this.element.locator('[data-row]').first().locator('input, textarea').first().focus();
  }

  /**
   * Types the fields from the first to the last: Enter goes on, a field without a value is passed over.
   *
   * @param fields  by id, as `data-row` names them
   */
  async fill(fields: Readonly<Record<string, string>>): Promise<void> {
    const rows = this.element.locator('[data-row]');
    const ids = await rows.evaluateAll((all) =>
      all.map((row) => (row as HTMLElement).dataset.row?.split(' ')[1] ?? ''),
    );
    const first = rows.first().locator('input, textarea').first();
    await expect(first).toBeFocused();
    for (const [index, id] of ids.entries()) {
      const text = fields[id];
      const row = rows.nth(index);
      const isTable = (await row.locator('[data-cells=rows]').count()) > 0;
      const isChoice = (await row.locator('input[type=radio]').count()) > 0;
      await expect(row.locator(':focus')).toHaveCount(1);
      if (text !== undefined) {
        if (isChoice) await this.#choose(row, text);
        else await this.#type(text, isTable);
      }
      await this.page.keyboard.press(isTable ? 'Control+Enter' : 'Enter');
      // One number in a list of many: Enter goes along its cells, and out of it at the empty one.
      const isList = (await row.locator('[data-cells]:not([data-cells=rows])').count()) > 0;
      for (let cell = 0; isList && cell < 12 && (await row.locator(':focus').count()) > 0; cell += 1) {
        await this.page.keyboard.press('Enter');
      }
    }
  }

  async #type(text: string, isTable: boolean): Promise<void> {
    const lines = isTable ? text.split('\n') : [text];
    for (const [index, line] of lines.entries()) {
      if (index > 0) await this.page.keyboard.press('Enter');
      await this.page.keyboard.type(line);
    }
  }

  /** Space takes the first answer, arrows go to the others. */
  async #choose(row: Locator, answer: string): Promise<void> {
    const radios = row.getByRole('radio');
    const count = await radios.count();
    await this.page.keyboard.press('Space');
    for (let step = 0; step < count; step += 1) {
      const checked = row.locator('input[type=radio]:checked');
      await checked.waitFor({ state: 'attached' });
      if ((await checked.getAttribute('value'))?.toLowerCase() === answer.toLowerCase()) return;
      await this.page.keyboard.press('ArrowRight');
    }
    throw new Error(`No answer ${answer}.`);
  }

  /** The maker's limit of one result, typed from the limit's own button. */
  async limit(of: string, edges: { min?: string; max?: string; page?: string }): Promise<void> {
    await this.result(of)
      .getByRole('button', { name: /^Limit of / })
      .press('Enter');
    const editor = this.element.getByRole('form', { name: `Limit of ${of}` });
    if (edges.min !== undefined) await editor.getByRole('textbox', { name: 'At least' }).pressSequentially(edges.min);
    if (edges.max !== undefined) await editor.getByRole('textbox', { name: 'At most' }).pressSequentially(edges.max);
    if (edges.page !== undefined)
      await editor.getByRole('textbox', { name: 'Page or paper' }).pressSequentially(edges.page);
    await this.page.keyboard.press('Enter');
    await editor.waitFor({ state: 'detached' });
  }

  result(of: string): Locator {
    return this.element.locator(`[data-result="${of}"]`);
  }

  problem(label: string): Locator {
    return this.element.locator('[data-row]', { hasText: label }).getByRole('status');
  }
}
