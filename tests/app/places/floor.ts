import type { Locator } from '@playwright/test';
import { Place } from '../../support/app/place.ts';
import { Visit } from './visit.ts';

interface NewMachine {
  readonly kind: string;
  readonly serial: string;
  readonly owner: string;
  readonly complaint: string;
  readonly hours: string;
}

/** Where the program opens, and the way in for a machine. */
export class Floor extends Place {
  /** The first time: one's own shop, with whoever works in it. */
  async openOwnShop(shop: string, person: string): Promise<void> {
    await this.button('Open your own shop').click();
    await this.field('Name of the shop').fill(shop);
    await this.field('Who works here').fill(person);
    await this.button(/open|begin/i)
      .last()
      .click();
  }

  /** Takes in a machine with the keyboard's own way to finish, and lands in its open visit. */
  async takeIn({ kind, serial, owner, complaint, hours }: NewMachine): Promise<Visit> {
    await this.button(/^Take in a machine/)
      .first()
      .click();
    await this.field('What kind of machine is it?').fill(kind);
    await this.field(/^Serial/).fill(serial);
    await this.field(/^Owner/)
      .first()
      .fill(owner);
    await this.field('What the owner says').fill(complaint);
    await this.field('Hour meter shows').fill(hours);
    await this.page.keyboard.press('Control+Enter');
    return new Visit(this.program);
  }

  machine(serial: string): Locator {
    return this.page
      .locator('[data-machine-row]', { hasText: serial })
      .or(this.page.getByRole('button', { name: new RegExp(serial) }));
  }
}
