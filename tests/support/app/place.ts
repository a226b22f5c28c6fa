import type { Locator, Page } from '@playwright/test';
import type { Program } from './program.ts';

/** A place of the window: owns the locators of what is there, by role first, and holds no assertions. */
export abstract class Place {
  protected readonly program: Program;

  constructor(program: Program) {
    this.program = program;
  }

  protected get page(): Page {
    return this.program.page;
  }

  protected button(name: string | RegExp): Locator {
    return this.page.getByRole('button', { name });
  }

  protected field(name: string | RegExp): Locator {
    return this.page.getByRole('textbox', { name });
  }
}
