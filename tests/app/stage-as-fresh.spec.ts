/**
 * However the stage was handled, at rest it shows what one shows that was just opened: nothing of before is left, nothing is
 * missing. What is done is drawn from a seed; WITNESS_MARK_SEED gives another, and a failure prints it.
 */
import { PNG } from 'pngjs';
import { stageWords } from '../../renderer/stage/words.ts';
import { expect, test } from '../support/app/fixture.ts';
import type { Program } from '../support/app/program.ts';
import { Random } from '../support/app/random.ts';
import { Visit } from './places/visit.ts';

const rounds = 4;
const handlingsEach = 8;
/** A difference of a channel that an eye would see. */
const seenFrom = 60;

test('a stage that was handled looks like one just opened', async ({ program }) => {
  test.setTimeout(300_000);
  const seed = Number(process.env.WITNESS_MARK_SEED ?? 5);
  const random = new Random(seed);
  const { page } = program;
  await page.getByRole('button', { name: 'Look around a made-up one' }).click();
  await page
    .getByRole('button', { name: /^Rough-terrain lift truck/ })
    .first()
    .click({ timeout: 90_000 });
  await page.getByRole('button', { name: /^Go on with/ }).click();
  const visit = new Visit(program);
  await visit.toPhotos();
  for (let round = 0; round < rounds; round += 1) {
    const done: string[] = [];
    for (let step = 0; step < handlingsEach; step += 1) {
      const name = random.oneOf(Object.keys(handlings));
      done.push(name);
      await handlings[name]?.(program, random);
      await page.waitForTimeout(random.between(0, 250));
    }
    const handled = await atRest(program);
    await visit.toPage();
    await visit.toPhotos();
    const fresh = await atRest(program);
    expect(differing(handled, fresh), `seed ${seed}, round ${round}: ${done.join(', ')}`).toBe(0);
  }
});

const stageOf = ({ page }: Program) => page.getByRole('application');

const handlings: Readonly<Record<string, (program: Program, random: Random) => Promise<void>>> = {
  'another photo': async ({ page }, random) => {
    const strip = page.getByRole('list', { name: stageWords.shots });
    await strip.getByRole('button', { name: new RegExp(`^Photo ${random.oneOf([1, 2, 3, 4, 5])}(:|$)`) }).click();
  },
  wheel: async (program, random) => {
    const { x, y } = await spot(program, random);
    await program.page.mouse.move(x, y);
    await program.page.mouse.wheel(0, random.between(-150, 150));
  },
  key: async (program, random) => {
    await stageOf(program).focus();
    await program.page.keyboard.press(random.oneOf(['+', '-', '0', '1', 'ArrowLeft', 'ArrowDown']));
  },
  'a tap': async (program, random) => {
    const { x, y } = await spot(program, random);
    await program.page.mouse.click(x, y);
    await program.page.keyboard.press('Escape');
  },
  'a pull': async (program, random) => {
    const [from, to] = [await spot(program, random), await spot(program, random)];
    await program.page.mouse.move(from.x, from.y);
    await program.page.mouse.down();
    await program.page.mouse.move(to.x, to.y, { steps: 4 });
    await program.page.mouse.up();
    await program.page.keyboard.press('Escape');
  },
  'a tool': async (program, random) => {
    await stageOf(program).focus();
    await program.page.keyboard.press(random.oneOf(['p', 'l', 'k', 'a', 'r', 's']));
    await program.page.keyboard.press('v');
  },
  light: async ({ page }) => page.keyboard.press('Control+l'),
  undo: async ({ page }) => page.keyboard.press('Control+z'),
  redo: async ({ page }) => page.keyboard.press('Control+Shift+Z'),
  'another size': async (program, random) => {
    await program.resize({
      width: Math.round(random.between(1100, 1600)),
      height: Math.round(random.between(700, 950)),
    });
  },
};

async function spot(program: Program, random: Random): Promise<{ x: number; y: number }> {
  const box = await stageOf(program).boundingBox();
  if (!box) throw new Error('the stage is not there');
  return { x: box.x + random.between(20, box.width - 20), y: box.y + random.between(20, box.height - 20) };
}

/** The whole photo with nothing in hand, once two pictures of it in a row are the same. */
async function atRest(program: Program): Promise<PNG> {
  const { page } = program;
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await stageOf(program).focus();
  for (const key of ['v', '0', 'Escape', 'Escape']) await page.keyboard.press(key);
  await page.mouse.move(2, 2);
  let before = '';
  let picture: Buffer = Buffer.alloc(0);
  await expect
    .poll(
      async () => {
        picture = await pictureOf(program);
        const now = picture.toString('base64');
        const isSame = now === before;
        before = now;
        const { moving, marks, photo } = await stageOf(program).evaluate((stage) => ({ ...stage.dataset }));
        return isSame && moving === 'false' && marks === 'drawn' && photo !== 'loading';
      },
      { intervals: [800], timeout: 30_000 },
    )
    .toBe(true);
  return PNG.sync.read(picture);
}

/** Without the rim that says where the keyboard is. */
async function pictureOf(program: Program): Promise<Buffer> {
  const box = await stageOf(program).boundingBox();
  if (!box) throw new Error('the stage is not there');
  const clip = { x: box.x + 6, y: box.y + 6, width: box.width - 12, height: box.height - 12 };
  return program.page.screenshot({ clip });
}

/** Pixels that an eye tells apart; all of them where the sizes differ. */
function differing(one: PNG, other: PNG): number {
  if (one.width !== other.width || one.height !== other.height) return one.width * one.height;
  let count = 0;
  for (let at = 0; at < one.data.length; at += 4) {
    const isSeen = [0, 1, 2].some(
      (channel) => Math.abs((one.data[at + channel] ?? 0) - (other.data[at + channel] ?? 0)) > seenFrom,
    );
    if (isSeen) count += 1;
  }
  return count;
}
