import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from '@playwright/test';
import { directHomography, project } from '../../shared-lib/calibration/homography.ts';
import { expect, test } from '../support/app/fixture.ts';
import { type Program, project as projectFolder } from '../support/app/program.ts';
import { CrossHair } from './places/cross-hair.ts';
import { FindingCard } from './places/finding-card.ts';
import { Floor } from './places/floor.ts';
import { ScalePane } from './places/scale-pane.ts';

/** A rendered scene of our own: where every feature lies, in millimetres and in the photo, is exact. */
const scene = join(projectFolder, 'assets/demo/photos/head-fire-face');
const { features } = JSON.parse(readFileSync(`${scene}.truth.json`, 'utf8')) as {
  features: Record<string, { mm: [number, number, number]; px: [number, number] }>;
};
const feature = (name: string) => {
  const found = features[name];
  if (!found) throw new Error(`the scene has no ${name}`);
  return found;
};
const pixel = (name: string) => feature(name).px;

/** Steps that a keyboard may take from the photo to a field beside it, and on: no more than a person would. */
const fewTabs = 10;

/** The photos of a visit just opened, by their key; from here on nothing but the keyboard is touched. */
async function onThePhoto(program: Program) {
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2204',
    owner: 'Per Lindqvist',
    complaint: '',
    hours: '3 860',
  });
  await expect(await visit.takePhotos([`${scene}.jpg`])).toContainText('1 photo offered, 1 taken in', {
    timeout: 60_000,
  });
  const visitId = await visit.visitId();
  await program.page.keyboard.press('Control+2');
  const stage = await visit.stage();
  await expect(stage.element).toBeFocused();
  const { keyboard } = program.page;
  const pane = new ScalePane(program, 1);

  const tabTo = async (wanted: Locator) => {
    for (let tab = 0; tab < fewTabs; tab += 1) {
      if (await wanted.evaluate((element) => element === document.activeElement)) return;
      await keyboard.press('Tab');
    }
    await expect(wanted, `not ${fewTabs} steps away`).toBeFocused();
  };
  return {
    stage,
    pane,
    keyboard,
    tabTo,
    hand: new CrossHair(program, stage),
    field: (name: RegExp) => pane.element.getByRole('textbox', { name }),
    /** Keeps the scale of the face named so, and measures with a span between two features. */
    async keepAndMeasure(face: string, hand: CrossHair, from: string, to: string, trueMm: number) {
      await tabTo(pane.element.getByRole('textbox', { name: 'The face it lies in' }));
      await keyboard.type(face);
      await expect(pane.fit).toContainText(/px per mm/);
      await tabTo(pane.element.getByRole('button', { name: 'Keep this scale' }));
      await keyboard.press('Enter');
      await expect(pane.element).toBeHidden();
      await expect(stage.element).toBeFocused();
      await keyboard.press('s');
      await hand.pressAt(pixel(from), pixel(to));
      const card = new FindingCard(program, 1);
      await expect(card.element.getByRole('region', { name: 'Measured on the photo' })).toContainText(/\d ± \d.* mm/);
      const { sizes } = await program.call('visit.get', { id: visitId });
      const value = sizes[0]?.size.value ?? 0;
      const expanded = sizes[0]?.size.expanded ?? 0;
      expect(expanded).toBeGreaterThan(0);
      expect(expanded).toBeLessThan(trueMm / 10);
      expect(Math.abs(value - trueMm)).toBeLessThan(expanded);
    },
  };
}

test('a known length sets the scale, and a mark is read in millimetres, by keys alone', async ({ program }) => {
  test.setTimeout(120_000);
  const { stage, pane, keyboard, hand, field, keepAndMeasure } = await onThePhoto(program);
  await keyboard.press('c');
  await expect(pane.element).toBeVisible();
  await expect(stage.element).toBeFocused();
  await hand.pressAt(pixel('rule 10 mm'), pixel('rule 140 mm'));
  await expect(field(/^How long it is/)).toBeFocused();
  await keyboard.type('130');
  await keepAndMeasure('the rule', hand, 'rule 50 mm', 'rule 110 mm', 60);
});

test('a known circle sets the scale by keys alone', async ({ program }) => {
  test.setTimeout(120_000);
  const { stage, pane, keyboard, tabTo, hand, field, keepAndMeasure } = await onThePhoto(program);
  await keyboard.press('c');
  await tabTo(pane.element.getByRole('radio', { name: /a known length/ }));
  await keyboard.press('ArrowDown');
  await keyboard.press('Enter');
  await expect(stage.element).toBeFocused();
  // Eight spots of a circle of 50 mm in the machined face.
  const face = ['intake seat 2', 'exhaust seat 2', 'exhaust seat 3', 'intake seat 3'].map(feature);
  const toPhoto = directHomography(
    face.map(({ mm, px }) => ({ from: { x: mm[0], y: mm[1] }, to: { x: px[0], y: px[1] } })),
  );
  const rim = Array.from({ length: 8 }, (_, spot): [number, number] => {
    const turn = (spot * Math.PI) / 4;
    const { x, y } = project(toPhoto, { x: 25 * Math.cos(turn), y: 25 * Math.sin(turn) }) ?? { x: 0, y: 0 };
    return [x, y];
  });
  await hand.pressAt(...rim);
  await tabTo(field(/^How wide the circle is/));
  await keyboard.type('50');
  await keepAndMeasure('fire face', hand, 'exhaust seat 2', 'exhaust seat 3', 118);
});

test('known points set the scale by keys alone', async ({ program }) => {
  test.setTimeout(120_000);
  const { stage, pane, keyboard, tabTo, hand, field, keepAndMeasure } = await onThePhoto(program);
  const set = ['intake seat 2', 'bolt hole between 2 and 3, near side', 'exhaust seat 3', 'intake seat 3'].map(feature);
  await keyboard.press('c');
  await tabTo(pane.element.getByRole('radio', { name: /a known length/ }));
  await keyboard.press('ArrowDown');
  await keyboard.press('ArrowDown');
  await tabTo(pane.element.getByRole('radio', { name: 'corners of a rectangle' }));
  await keyboard.press('ArrowRight');
  await keyboard.press('Enter');
  await expect(stage.element).toBeFocused();
  await hand.pressAt(...set.map(({ px }) => px));
  await tabTo(field(/^Point 1 across/));
  for (const [index, { mm }] of set.entries()) {
    await expect(field(new RegExp(`^Point ${index + 1} across`))).toBeFocused();
    await keyboard.type(`${mm[0]}`);
    await keyboard.press('Tab');
    await keyboard.type(`${mm[1]}`);
    await keyboard.press('Tab');
  }
  await keepAndMeasure('fire face', hand, 'exhaust seat 2', 'exhaust seat 3', 118);
});
