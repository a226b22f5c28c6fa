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

  /** Another kind than it was called before. */
  async changeKind(name: string): Promise<void> {
    await this.element.getByRole('button', { name: /^Change what it is/ }).click();
    await this.kind(name);
  }

  /** This conclusion stays, struck through; the card of the new one opens. */
  async supersede(because: string): Promise<void> {
    await this.element.getByText('It turned out to be something else').click();
    await this.element.getByRole('textbox', { name: 'What showed it' }).fill(because);
    await this.element.getByRole('button', { name: 'Begin the new one' }).click();
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

  /** What else counts, as a line to tick. */
  async fact(words: string): Promise<void> {
    const line = this.element.getByRole('checkbox', { name: words });
    if (!(await line.isVisible())) await this.element.getByText(/^What else counts/).click();
    await line.click();
    // It is ticked once the recorder has written it.
    await expect(line).toBeChecked();
  }

  /** The harm, when, and the cost, in the words of the card. */
  async judge(harm: readonly [worst: string, likely: string] | 'no', soon: string, cost: string): Promise<void> {
    await this.choose('Can it hurt somebody?', harm === 'no' ? 'no' : 'yes');
    if (harm !== 'no') {
      await this.choose('The worst that is believable', new RegExp(harm[0]));
      await this.choose(/How likely/, new RegExp(harm[1]));
    }
    await this.choose('How soon it matters', soon);
    await this.choose('Does running make it worse?', 'no');
    await this.choose('What waiting can cost', new RegExp(cost));
  }

  /** Joins the reading whose line begins so. */
  async joinReading(place: string | RegExp): Promise<void> {
    const shown = this.element.getByRole('region', { name: 'Shown by' });
    await shown.getByText('Join a reading', { exact: true }).click();
    await shown.getByRole('listitem').filter({ hasText: place }).getByRole('button', { name: 'It shows this' }).click();
    await expect(shown.getByRole('button', { name: 'Take away' }).first()).toBeVisible();
  }

  /** By way of the photos: the one on the stage shows it. */
  async showByFirstPhoto(): Promise<void> {
    await this.element.getByRole('button', { name: 'To the photos' }).click();
    await this.element.getByRole('button', { name: 'This photo shows it, without a mark' }).click();
    await expect(
      this.element.getByRole('region', { name: 'Shown by' }).getByRole('button', { name: /^Photo/ }),
    ).toBeVisible();
  }

  async close(): Promise<void> {
    await this.element.getByRole('button', { name: /^Close finding/ }).click();
  }
}
