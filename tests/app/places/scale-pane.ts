import { expect, type Locator } from '@playwright/test';
import { Place } from '../../support/app/place.ts';
import type { Program } from '../../support/app/program.ts';

/** The pane where the scale of the photo on the stage is set. */
export class ScalePane extends Place {
  readonly element: Locator;
  readonly fit: Locator;

  constructor(program: Program, photo: number) {
    super(program);
    this.element = this.page.getByRole('complementary', { name: `Scale of photo ${photo}` });
    this.fit = this.element.getByRole('region', { name: 'How well it fits' });
  }

  static async open(program: Program, photo: number): Promise<ScalePane> {
    const pane = new ScalePane(program, photo);
    await program.page
      .getByRole('toolbar')
      .getByRole('button', { name: /^Scale/ })
      .click();
    await pane.element.waitFor();
    return pane;
  }

  async choose(group: string, option: RegExp): Promise<void> {
    const radio = this.element.getByRole('group', { name: group }).getByRole('radio', { name: option });
    await radio.click();
    await expect(radio).toBeChecked();
  }

  async type(field: string, text: string): Promise<void> {
    // Its unit is part of a field's name.
    await this.element.getByRole('textbox', { name: new RegExp(`^${field}( mm| in)?$`) }).fill(text);
  }

  async keep(): Promise<void> {
    await this.element.getByRole('button', { name: 'Keep this scale' }).click();
    await this.element.waitFor({ state: 'hidden' });
  }
}
