import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { beginScenario } from '../support/app/begin-scenario.ts';
import { expect, test } from '../support/app/fixture.ts';
import { type Program, project } from '../support/app/program.ts';
import { Choices } from './places/decision.ts';
import { Sheets } from './places/sheets.ts';
import { Visit } from './places/visit.ts';

/*
 * Three worked cases by hand: clicks and keys for all that is done in the visit. What must come of it (order, tiers, what each
 * choice leaves) is the case's own `expect`, written down in tests/reference/scenarios.
 */

const anyPhoto = join(project, 'assets/demo/photos/dashboard.jpg');
const textOf = (pdf: string): string =>
  execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');

const order = async (program: Program, visitId: string) =>
  (await program.call('standing.get', { visitId })).lines.map(({ number, tier }) => [number, tier]);

const left = async (program: Program, visitId: string) =>
  Object.fromEntries(
    (await program.call('choices.get', { visitId })).choices.map((choice) => [
      choice.name,
      choice.left.map(({ number }) => number),
    ]),
  );

/** One reason for all that was agreed and not looked at. */
const answerTheRest = async (program: Program): Promise<void> => {
  const { page } = program;
  await page.getByRole('button', { name: 'What was agreed' }).first().click();
  const all = page.getByRole('button', { name: 'All that is left: not authorised by owner' });
  await all.click();
  await expect(all).toBeHidden();
  await page.keyboard.press('Escape');
};

test('the backhoe is back: old findings answered, decided, signed, issued, corrected and checked', async ({
  folder,
  launch,
}) => {
  test.setTimeout(180_000);
  beginScenario(folder, 's6-backhoe-visit-and-return.json', 'nothing');
  const program = await launch();
  const { page } = program;
  await page
    .getByRole('button', { name: /backhoe/i })
    .first()
    .click();
  await page.getByRole('button', { name: 'It is here again' }).click();
  await page.getByRole('textbox', { name: /^Hour meter shows/ }).fill('6260');
  await page.getByRole('textbox', { name: 'What the owner says' }).fill('Slow to crank.');
  await page.getByRole('button', { name: 'Open the visit' }).click();
  const visit = new Visit(program);
  await expect(visit.notebook).toContainText('Slow to crank.');
  const visitId = await visit.visitId();
  const taken = await visit.takePhotos([anyPhoto]);
  await expect(taken).toContainText('1 taken in', { timeout: 30_000 });

  // Steering and strap are measured first: the readings show their findings.
  const sheets = new Sheets(program);
  const play = await sheets.open('Steering free play');
  await play.changePlace('drag link');
  await play.fill({ radius: '200', arc: '82' });
  const drop = await sheets.open('Voltage drop of a cable');
  await drop.changePlace('ground strap 1');
  await drop.fill({ drop: '0.38', current: '480' });
  await visit.toPage();

  const before = page.getByRole('region', { name: 'Since last time' });
  await before.getByRole('button', { name: 'Finding 1: Grown' }).click();
  const hose = await visit.card(1);
  await hose.changeKind('Leak');
  await hose.choose('Class of leak', /^II$/);
  await hose.judge(['Catastrophic', 'Probable'], 'Within 10 hours', 'A real repair');
  await hose.showByFirstPhoto();
  await visit.toPage();
  await before.getByRole('button', { name: 'Finding 3: Grown' }).click();
  const crack = await visit.card(3);
  await crack.type('Length', '31 mm');
  await crack.fact('It has been shown to grow');
  await crack.judge(['Catastrophic', 'Occasional'], 'Within 250 hours', 'A real repair');
  await crack.showByFirstPhoto();
  await visit.toPage();
  await before.getByRole('button', { name: 'Finding 2: Grown' }).click();
  const steering = await visit.card(2);
  await steering.type('Play', '23.5 °');
  await steering.joinReading(/drag link/i);
  await steering.close();
  await before.getByRole('button', { name: 'Finding 4: The same' }).click();
  await (await visit.openFinding(4)).showByFirstPhoto();
  const strap = await visit.writeFinding(5);
  await strap.place('ground strap 1');
  await strap.kind('Corroded contact');
  await strap.choose('How sure', /^Confirmed/);
  await strap.by('Electrical test');
  await strap.type('Voltage drop', '0.38 V');
  await strap.judge('no', 'Within 50 hours', 'A small repair');
  await strap.joinReading(/strap/i);
  await strap.close();
  // Published order of the case's second visit.
  await expect
    .poll(() => order(program, visitId))
    .toEqual([
      [1, 0],
      [3, 0],
      [2, 1],
      [5, 3],
      [4, 3],
    ]);
  // 22 to 31 mm in 210 h: the handbook's worked example of crack growth.
  await expect(before.getByRole('list', { name: 'Answered', exact: true })).toContainText(/4\.3\smm per 100\sh/);
  await program.picture('by-hand-since');
  await answerTheRest(program);

  const choices = new Choices(program);
  await choices.open();
  await choices.write('strap only', { 1: 'left as it is', 5: 'mended' });
  await choices.write('all but the gauges', {
    1: 'mended',
    2: 'mended',
    3: 'mended',
    4: 'left as it is',
    5: 'mended',
  });
  await expect.poll(() => left(program, visitId)).toEqual({ 'strap only': [1, 3, 2, 4], 'all but the gauges': [4] });

  // Changed since they were told: the old signatures do not cover them. Nobody can issue over them either.
  await choices.readFinding(1);
  await expect(choices.decisions.getByRole('region', { name: 'Decided before' })).toContainText('does not cover this');
  await choices.end('1');
  await choices.sign();
  await choices.keep();
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'Report', exact: true }).click();
  const needed = page.getByRole('region', { name: 'Needed before it is issued' });
  await expect(needed.getByRole('listitem')).toHaveCount(4, { timeout: 30_000 });
  await page
    .getByRole('region', { name: 'Issued' })
    .getByRole('button', { name: /^Issue/ })
    .click();
  await expect(page.getByRole('alert')).toContainText('Finding 3: nobody has decided on it.');
  await program.picture('by-hand-refused');
  await needed.getByRole('button', { name: /^Finding 3/ }).click();
  await expect(choices.statement.getByRole('heading', { name: /^Read this back/ })).toBeVisible();
  await choices.open();
  await choices.readBack('all but the gauges');
  await choices.end('1');
  await choices.sign();
  await choices.keep();

  const first = join(folder, 'report 1.pdf');
  await visit.issueReport(first);
  expect(execFileSync('pdfsig', ['-nocert', first], { encoding: 'utf8' })).toContain('Total document signed');
  const said = textOf(first);
  expect(said).toContain('Since last time');
  expect(said).toContain('It was declined (“taped it”).');
  expect(said).toMatch(/Length 22\smm then, 31\smm now/);
  await expect(await visit.verifyByDropping(first)).toContainText('genuine');

  // A correction is the next revision, and says what it changes.
  await visit.toPage();
  const old = await visit.openFinding(5);
  await old.supersede('the fault is the bolt under it');
  const corrected = await visit.card(6);
  await corrected.kind('Corroded contact');
  await corrected.judge('no', 'Within 50 hours', 'A small repair');
  await corrected.close();
  await choices.open();
  await choices.readFinding(6);
  await choices.end('3', 'the strap is off');
  await choices.sign();
  await choices.keep();
  const second = join(folder, 'report 2.pdf');
  await visit.issueReport(second);
  expect(textOf(second)).toContain('It replaces revision 1.');
  await expect(await visit.verifyByDropping(second)).toContainText('Report 1, revision 2');
  await expect(await visit.verifyByDropping(first)).toContainText('revision 2 has taken its place');
  const bytes = readFileSync(second);
  bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
  const forged = join(folder, 'forged.pdf');
  writeFileSync(forged, bytes);
  await expect(await visit.verifyByDropping(forged)).toContainText('altered');
});

test('the crane’s jack sinks: measured, decided, mended, tested after the work and handed over', async ({
  folder,
  launch,
}) => {
  test.setTimeout(180_000);
  const { visits } = beginScenario(folder, 's4-crane-sinking-jack.json', 'its intake');
  const visitId = visits.V1 ?? '';
  const program = await launch();
  const { page } = program;
  await page.getByRole('button', { name: /crane/i }).first().click();
  const visit = new Visit(program);
  await expect(visit.notebook).toContainText('Left rear jack sinks by lunch.');
  const taken = await visit.takePhotos([anyPhoto]);
  await expect(taken).toContainText('1 taken in', { timeout: 30_000 });
  const sheets = new Sheets(program);
  const drift = await sheets.open('Hydraulic cylinder drift');
  await drift.changePlace('jack cylinder rear left');
  await drift.fill({ drift: '18', time: '30', bore: '100', rod: '60', load: 'pushes rod in' });
  // 78.54 cm² and 141 mL: the handbook's figures for this case.
  await expect(drift.result('area')).toContainText('78.5');
  await expect(drift.result('volume')).toContainText('141');

  const valve = await visit.writeFinding(1);
  await valve.place('lock valve rear left');
  await valve.kind('Drift');
  await valve.choose('How sure', /^Confirmed/);
  await valve.by('Measured');
  await valve.judge(['Catastrophic', 'Probable'], 'At the next start', 'A real repair');
  await valve.fact('It moves under the load it has to hold');
  await valve.joinReading(/jack/i);
  await valve.close();
  const hose = await visit.writeFinding(2);
  await hose.place('hose jack rear left');
  await hose.kind('Hose cover damage');
  await hose.choose('How sure', /^Confirmed/);
  await hose.by('By eye');
  await hose.judge(['Catastrophic', 'Remote'], 'Within 50 hours', 'A small repair');
  await hose.fact('It goes down to the wire or braid');
  await hose.showByFirstPhoto();
  const bubble = await visit.writeFinding(3);
  await bubble.place('level');
  await bubble.kind('Does not work');
  await bubble.choose('How sure', /^Confirmed/);
  await bubble.by('Pressure, flow or function test');
  await bubble.judge(['Marginal', 'Occasional'], 'No time seen', 'A small repair');
  await bubble.showByFirstPhoto();
  await expect
    .poll(() => order(program, visitId))
    .toEqual([
      [1, 0],
      [2, 1],
      [3, 1],
    ]);

  const choices = new Choices(program);
  await choices.open();
  await choices.write('tag out, no lifting', { 1: 'locked out, still there', 2: 'locked out, still there' });
  await choices.write('mend what was found', { 1: 'mended', 2: 'mended', 3: 'mended' });
  await expect
    .poll(() => left(program, visitId))
    .toEqual({ 'tag out, no lifting': [1, 2, 3], 'mend what was found': [] });
  await choices.readBack('mend what was found');
  await choices.end('1');
  await choices.sign();
  await choices.keep();

  // The work, against what was agreed; the jack is measured again.
  const again = await sheets.open('Hydraulic cylinder drift');
  await again.changePlace('jack cylinder rear left');
  await again.fill({ drift: '0.5', time: '30', bore: '100', rod: '60', load: 'pushes rod in' });
  await page.keyboard.press('Control+6');
  const work = page.getByRole('region', { name: 'The work done', exact: true });
  expect(await seriousViolations(page)).toEqual([]);
  await work.getByRole('button', { name: 'Finding 1: done', exact: true }).click();
  const first = work.getByRole('region', { name: 'Work on finding 1' });
  await page.keyboard.type('new lock valve fitted');
  await first.getByRole('button', { name: 'A part went in' }).click();
  await first.getByRole('textbox', { name: 'What went in' }).fill('lock valve');
  await first.getByRole('radio', { name: 'new', exact: true }).click();
  await first.getByRole('button', { name: 'Write the part' }).click();
  await expect(first.getByRole('region', { name: 'Parts that went in' })).toContainText(/lock valve, new/);
  await first
    .getByRole('list', { name: 'Readings of this visit' })
    .getByRole('button', { name: 'This shows it' })
    .last()
    .click();
  await expect(first.getByText('Nothing shows yet that it holds.')).toBeHidden();
  await work.getByRole('button', { name: 'Finding 2: done', exact: true }).click();
  await page.keyboard.type('hose renewed and clipped clear');
  await work.getByRole('button', { name: 'Finding 3: not done', exact: true }).click();
  await work
    .getByRole('region', { name: 'Work on finding 3' })
    .getByRole('textbox', { name: 'Because' })
    .fill('no bubble in stock');
  const pane = page.getByRole('complementary', { name: 'Hand-over' });
  await pane.getByRole('textbox', { name: /^How it may be used/ }).fill('Lifting only with a level laid on the frame.');
  await pane.getByRole('textbox', { name: 'When to come back' }).fill('When the bubble has come.');
  await pane.getByRole('button', { name: 'Dagny Rusk' }).click();
  await expect(pane.getByRole('region', { name: 'Still there' })).toContainText('Fix before work');
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('by-hand-work');
  await program.resize({ width: 1920, height: 1080 });
  await program.picture('by-hand-work-wide');
  const fitted = (await program.call('visit.get', { id: visitId })).fittedParts;
  expect(fitted).toMatchObject([{ path: 'HYD/LOCKV.jack.RL', kind: 'new', fittedVisitId: visitId, fittedHours: 5020 }]);

  const pdf = join(folder, 'crane.pdf');
  await visit.issueReport(pdf);
  const said = textOf(pdf);
  expect(said).not.toContain('Do not operate this machine');
  expect(said).toContain('Hand-over');
  expect(said).toContain('Handed over to Dagny Rusk.');
  expect(said).toContain('Not done: no bubble in stock.');
  expect(said).toContain('Lifting only with a level laid on the frame.');
  expect(said).toMatch(/Shown after the work by hydraulic cylinder drift/);
});

test('the roller’s brakes: what is not looked at stays on top, and what the mechanic refuses is on record', async ({
  folder,
  launch,
}) => {
  test.setTimeout(180_000);
  const { visits } = beginScenario(folder, 's7-roller-brakes.json', 'its intake');
  const visitId = visits.V1 ?? '';
  const program = await launch();
  const { page } = program;
  await page
    .getByRole('button', { name: /roller/i })
    .first()
    .click();
  const visit = new Visit(program);
  await expect(visit.notebook).toContainText('Slow to start, creeps when parked.');
  const taken = await visit.takePhotos([anyPhoto]);
  await expect(taken).toContainText('1 taken in', { timeout: 30_000 });
  const sheets = new Sheets(program);
  const stopping = await sheets.open('Brakes');
  await stopping.fill({ speed: '12', distance: '4.5' });
  // 12 km/h in 4.5 m: 1.23 m/s², beyond what common practice asks. Source: the handbook's case.
  await expect(stopping.result('deceleration')).toContainText('1.2');
  await expect(stopping.result('deceleration')).toContainText('beyond');
  const drop = await sheets.open('Voltage drop of a cable');
  await drop.changePlace('ground strap 1');
  await drop.fill({ drop: '0.90', current: '310' });

  const parking = await visit.writeFinding(1);
  await parking.place('parking brake');
  await parking.kind('Low output');
  await parking.choose('How sure', /^Confirmed/);
  await parking.by('Measured');
  await parking.judge(['Catastrophic', 'Probable'], 'At the next start', 'A real repair');
  await parking.fact('It creeps on the slope it works on');
  await parking.showByFirstPhoto();
  const service = await visit.writeFinding(2);
  await service.place('brake disc left');
  await service.kind('Low output');
  await service.choose('How sure', /^Confirmed/);
  await service.by('Measured');
  await service.judge(['Catastrophic', 'Probable'], 'At the next start', 'A real repair');
  await service.fact('It is past its limit');
  await service.joinReading(/brakes/i);
  await service.close();
  const frame = await visit.writeFinding(3);
  await frame.place('rollover');
  await frame.kind('Earlier repair');
  await frame.choose('How sure', /^Confirmed/);
  await frame.by('By eye');
  await frame.judge(['Catastrophic', 'Occasional'], 'No time seen', 'A large part of it');
  await frame.showByFirstPhoto();
  const strap = await visit.writeFinding(4);
  await strap.place('ground strap 1');
  await strap.kind('Corroded contact');
  await strap.choose('How sure', /^Confirmed/);
  await strap.by('Electrical test');
  await strap.judge('no', 'Within 250 hours', 'A small repair');
  await strap.joinReading(/strap/i);
  await strap.close();
  const lining = await visit.writeFinding(5);
  await lining.place('brake lining left');
  await lining.kind('Wear');
  await lining.choose('How sure', /^Not examined/);
  await lining.type('Why it was not examined', 'wheels on');
  await lining.judge(['Catastrophic', 'Occasional'], 'No time seen', 'A real repair');
  await lining.close();
  // Published order of the case: the complaint, slow starting, comes last.
  await expect
    .poll(() => order(program, visitId))
    .toEqual([
      [2, 0],
      [1, 0],
      [3, 0],
      [5, 1],
      [4, 3],
    ]);

  const choices = new Choices(program);
  await choices.open();
  await choices.write('strap only', { 4: 'mended' });
  await choices.write('brakes and strap, tagged out', {
    1: 'mended',
    2: 'mended',
    3: 'left as it is',
    4: 'mended',
    5: 'unknown until opened',
  });
  await expect
    .poll(() => left(program, visitId))
    .toEqual({ 'strap only': [2, 1, 3, 5], 'brakes and strap, tagged out': [3, 5] });

  // Judged anew: what is left of it after a part repair is the mechanic's to say, and ranks by it.
  await choices.table
    .getByRole('combobox', { name: '“strap only”: finding 1' })
    .selectOption({ label: 'partly mended' });
  await choices.table.getByRole('button', { name: '“strap only”: finding 1: judge it anew' }).click();
  const anew = page.getByRole('dialog', { name: 'Finding 1 after “strap only”' });
  await anew.getByRole('group', { name: 'Can it hurt somebody then?' }).getByRole('radio', { name: 'yes' }).click();
  await anew
    .getByRole('group', { name: 'How likely then' })
    .getByRole('radio', { name: /Remote/ })
    .click();
  await anew.getByRole('textbox', { name: 'Why' }).fill('wedges carried and laid');
  await anew.getByRole('textbox', { name: 'Why' }).press('Control+Enter');
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('by-hand-judged-anew');
  await page.keyboard.press('Escape');
  await expect(choices.table).toContainText('judged anew: wedges carried and laid');
  const after = async () => {
    const { choices: offered } = await program.call('choices.get', { visitId });
    return offered.find(({ name }) => name === 'strap only')?.left.find(({ number }) => number === 1)?.level;
  };
  await expect.poll(after).toBe('Serious');

  await choices.readBack('brakes and strap, tagged out');
  await expect(choices.statement).toContainText(
    'After it the machine is still not to be operated, because of finding 3.',
  );
  await choices.end('1');
  await choices.sign();
  await choices.keep();
  await choices.readFinding(3);
  await page.getByRole('button', { name: 'What was asked is refused by the mechanic' }).click();
  await page
    .getByRole('textbox', { name: 'What the mechanic refuses, and why' })
    .fill('to plate over the frame holes; it goes to the maker or a competent person');
  await page.getByRole('textbox', { name: 'Or why it is not signed' }).fill('told by phone');
  await choices.keep();

  const pdf = join(folder, 'roller.pdf');
  await visit.issueReport(pdf);
  const said = textOf(pdf);
  expect(said).toContain('Do not operate this machine');
  expect(said).toContain('The mechanic refuses: to plate over the frame holes');
  expect(said).toMatch(/Not signed: told by phone/);
  expect(execFileSync('pdfsig', ['-nocert', pdf], { encoding: 'utf8' })).toContain('Signature is Valid');
});
