import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Locator, Page } from '@playwright/test';
import { damageClasses } from '../../../shared-lib/judgement/damage-class.ts';
import { urgencies } from '../../../shared-lib/judgement/urgency.ts';
import { type Program, project } from '../../support/app/program.ts';
import type { Random } from '../../support/app/random.ts';
import { Visit } from '../places/visit.ts';
import type { Claims } from './claims.ts';

const patienceMs = 15_000;
const lookEveryMs = 15;
const photosAtOnce = 4;

/** Told to stop, because what it works with is gone. */
class Stopped extends Error {}

/**
 * A mechanic who works without a pause: writes findings, judges them, draws marks, takes photos in. It notes as done
 * what the window has shown as done, and nothing else.
 */
export class BusyHand {
  readonly #program: Program;
  readonly #visit: Visit;
  readonly #claims: Claims;
  readonly #random: Random;
  readonly #folder: string;
  #isStopped = false;

  constructor(program: Program, parts: { claims: Claims; random: Random; folder: string }) {
    this.#program = program;
    this.#visit = new Visit(program);
    this.#claims = parts.claims;
    this.#random = parts.random;
    this.#folder = parts.folder;
  }

  /** Works until it is told to stop, or until an action failed for another reason. */
  async work(): Promise<void> {
    try {
      while (true) {
        await this.#random.oneOf([this.#writeFinding, this.#judgeFinding, this.#drawMark, this.#takePhotos])();
      }
    } catch (error) {
      // What was under way when the ground went does not count, however it failed.
      if (!this.#isStopped) throw error;
    }
  }

  stop(): void {
    this.#isStopped = true;
  }

  /** One photo, so that there is something to draw on. */
  async begin(): Promise<void> {
    await this.#takePhotos();
  }

  /** Back to the page of the visit, whatever was open when it was stopped. */
  async tidy(): Promise<void> {
    await this.#closeCard();
    await this.#visit.toPage();
    await this.#putOutcomesAway();
  }

  readonly #writeFinding = async (): Promise<void> => {
    await this.#visit.toPage();
    const before = await this.#highestFinding();
    await this.#visit.standing.getByRole('button', { name: 'Write a finding' }).click();
    const number = await this.#cardBeyond(before);
    const card = this.#card(number);
    const words = `note ${number} ${this.#random.share().toString(36).slice(2)}`;
    const box = card.getByRole('textbox', { name: 'In your own words' });
    await box.fill(words);
    this.#claims.asks(`words of finding ${number}`, words);
    await box.blur();
    await this.#judge(number);
    await this.#closeCard();
    // The standing has its titles from the record.
    await this.#seen(this.#visit.standing.getByText(words));
    this.#claims.shows(`words of finding ${number}`, words);
  };

  readonly #judgeFinding = async (): Promise<void> => {
    await this.#visit.toPage();
    const lines = await this.#visit.standing.getByRole('img', { name: /^Finding \d+:/ }).all();
    if (lines.length === 0) return;
    const line = this.#random.oneOf(lines);
    const number = Number(/\d+/.exec((await line.getAttribute('aria-label')) ?? '')?.[0]);
    await line.click();
    await this.#seen(this.#card(number));
    await this.#judge(number);
    await this.#closeCard();
  };

  readonly #drawMark = async (): Promise<void> => {
    const stage = await this.#visit.toPhotos();
    const before = await this.#highestFinding();
    await stage.pickTool('Point');
    await stage.tap(this.#random.between(100, 900), this.#random.between(100, 700));
    const number = await this.#cardBeyond(before);
    this.#claims.shows(`mark of finding ${number}`, 'point');
    await this.#closeCard();
  };

  readonly #takePhotos = async (): Promise<void> => {
    await this.#visit.toPage();
    const names = Array.from({ length: photosAtOnce }, () => `photo ${this.#random.share().toString(36).slice(2)}.jpg`);
    for (const name of names) writeFileSync(join(this.#folder, name), photoWith(name));
    const outcome = await this.#visit.takePhotos(names.map((name) => join(this.#folder, name)));
    const progress = this.#page.getByRole('progressbar', { name: 'Taking in' });
    // They are taken in in the order of offering, so a count says which.
    const note = (count: number) => {
      for (const name of names.slice(0, count)) this.#claims.shows(`photo ${name}`, true);
    };
    const taken = outcome.getByText(`${photosAtOnce} photos offered, ${photosAtOnce} taken in`);
    await this.#until('the photos are taken in', async () => {
      // It may go at any moment, so it is looked at without waiting for it.
      const counts = await progress.evaluateAll((bars) => bars.map((bar) => Number(bar.getAttribute('aria-valuenow'))));
      note(Math.max(0, ...counts));
      return (await taken.isVisible()) || undefined;
    });
    note(photosAtOnce);
    await outcome.getByRole('button', { name: 'Put this away' }).click();
  };

  /** The outcome of an import that was cut off before it was put away would pass for that of the next. */
  async #putOutcomesAway(): Promise<void> {
    const away = this.#page
      .getByRole('region', { name: 'Photos taken in' })
      .getByRole('button', { name: 'Put this away' });
    while ((await away.count()) > 0) await away.first().click();
  }

  async #judge(number: number): Promise<void> {
    const card = this.#card(number);
    const choose = async (group: string, words: string, name: string, value: number | boolean) => {
      const radio = card.getByRole('group', { name: group }).getByRole('radio', { name: words });
      this.#claims.asks(name, value);
      await radio.click();
      // The card shows what the record holds, so it is picked only once it is written.
      const isPicked = () => radio.evaluateAll((radios) => radios.some((radio) => radio.matches(':checked')));
      await this.#until(`${words} is picked`, async () => (await isPicked()) || undefined);
      this.#claims.shows(name, value);
    };
    const soon = this.#random.oneOf(urgencies);
    await choose('How soon it matters', soon.label, `urgency of finding ${number}`, soon.urgency);
    const runWorse = this.#random.oneOf([true, false]);
    await choose('Does running make it worse?', runWorse ? 'yes' : 'no', `run-worse of finding ${number}`, runWorse);
    const cost = this.#random.oneOf(damageClasses);
    await choose('What waiting can cost', cost.label, `damage class of finding ${number}`, cost.damageClass);
  }

  get #page(): Page {
    return this.#program.page;
  }

  #card(number: number): Locator {
    return this.#page.getByRole('complementary', { name: `Finding ${number}`, exact: true });
  }

  async #highestFinding(): Promise<number> {
    const { findings } = await this.#program.call('visit.get', { id: await this.#visit.visitId() });
    return Math.max(0, ...findings.map(({ number }) => number));
  }

  /** Waits for the card of a finding that was not there before. */
  async #cardBeyond(number: number): Promise<number> {
    await this.#seen(this.#card(number + 1));
    this.#claims.shows(`finding ${number + 1}`, true);
    return number + 1;
  }

  async #closeCard(): Promise<void> {
    const close = this.#page.getByRole('button', { name: /^Close finding/ });
    if (await close.isVisible()) await close.click();
  }

  #seen(what: Locator): Promise<boolean> {
    return this.#until(`${what} is seen`, async () => (await what.first().isVisible()) || undefined);
  }

  async #until<T>(what: string, ask: () => Promise<T | undefined>): Promise<T> {
    const deadline = Date.now() + patienceMs;
    while (Date.now() < deadline) {
      if (this.#isStopped) throw new Stopped();
      const answer = await ask();
      if (answer !== undefined) return answer;
      await pause(lookEveryMs);
    }
    throw new Error(`Waited in vain until ${what}.`);
  }
}

const photo = readFileSync(join(project, 'assets/demo/photos/head-fire-face.jpg'));

/** The same picture with a remark of its own, so that no two have the same bytes. */
function photoWith(remark: string): Buffer {
  const text = Buffer.from(remark);
  const head = Buffer.from([0xff, 0xfe, 0, text.byteLength + 2]);
  return Buffer.concat([photo.subarray(0, 2), head, text, photo.subarray(2)]);
}
