import { expect, type Locator } from '@playwright/test';
import { Place } from '../../support/app/place.ts';
import type { Program } from '../../support/app/program.ts';

/** The card of the finding in hand. */
export class FindingCard extends Place {
  readonly element: Locator;

  constructor(program: Program, number: number) {
    super(program);
    this.element = this.page.getByRole('complementary', { name: `Finding ${number}`, exact: true });
  }

  /** Finds a part by words and takes the first one offered. */
  async place(words: string): Promise<void> {
    await this.element.getByRole('button', { name: /the where$/i }).click();
    await this.element.getByRole('textbox', { name: 'Where is it?' }).fill(words);
    await this.element
      .getByRole('region', { name: 'Where', exact: true })
      .getByRole('listitem')
      .first()
      .getByRole('button')
      .click();
  }

  async kind(name: string): Promise<void> {
    await this.element.getByRole('textbox', { name: 'What is it?' }).fill(name);
    await this.element
      .getByRole('listitem')
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .first()
      .click();
  }

  async choose(group: string | RegExp, option: string | RegExp): Promise<void> {
    const radio = this.element.getByRole('group', { name: group }).getByRole('radio', { name: option });
    await radio.click();
    // It is picked once the recorder has written it.
    await expect(radio).toBeChecked();
  }

  async by(method: string): Promise<void> {
    await this.element.getByRole('group', { name: 'Looked at by' }).getByRole('button', { name: method }).click();
  }

  async type(field: string | RegExp, text: string): Promise<void> {
    const box = this.element.getByRole('textbox', { name: field });
    await box.fill(text);
    await box.press('Enter');
  }

  async close(): Promise<void> {
    await this.element.getByRole('button', { name: /^Close finding/ }).click();
  }
}
