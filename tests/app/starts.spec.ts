import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { isAlive, until } from '../support/app/processes.ts';

test('the window opens on an empty folder, at its address, and the recorder answers', async ({ program }) => {
  await expect(program.page).toHaveTitle('Witness Mark');
  expect(program.page.url()).toBe('app://witness/');
  const state = await program.call('app.state', {});
  expect(state).toMatchObject({ started: false, dataFolder: program.dataFolder });
  await expect(program.page.getByRole('main')).toBeVisible();
  expect(await seriousViolations(program.page)).toEqual([]);
  await program.picture('first-start');
});

test('the page has no Node, no way out, and no permission', async ({ program }) => {
  program.allowErrors(/Content Security Policy|Refused to|Not allowed|Failed to load/);
  const { page } = program;
  expect(await page.evaluate(() => ['require', 'process', 'Buffer'].filter((name) => name in window))).toEqual([]);
  expect(await page.evaluate(() => Object.keys(Reflect.get(window, 'witness')).sort())).toEqual([
    'call',
    'offerFiles',
    'on',
  ]);
  const fetched = (url: string) =>
    page.evaluate(
      (url) =>
        fetch(url).then(
          ({ status }) => status,
          () => 'refused',
        ),
      url,
    );
  expect(await fetched('https://example.com/')).toBe('refused');
  expect(await fetched('file:///etc/passwd')).toBe('refused');
  expect(await fetched('app://witness/../package.json')).toBe(404);
  expect(await fetched('app://witness/..%2f..%2fpackage.json')).toBe(404);
  expect(await fetched('photo://store/not-a-digest')).toBe(404);
  expect(await page.evaluate(() => window.open('https://example.com/'))).toBeNull();
  expect(
    await page.evaluate(() => navigator.permissions.query({ name: 'geolocation' }).then(({ state }) => state)),
  ).toBe('denied');
  await page.evaluate(() => location.assign('https://example.com/'));
  expect(await program.call('app.state', {})).toMatchObject({ started: false });
  expect(page.url()).toBe('app://witness/');
});

test('files are handed over by token only, and a name that is no operation is refused', async ({ program }) => {
  const ask = (name: string, input: unknown) =>
    program.page.evaluate(([name, input]) => Reflect.get(window, 'witness').call(name, input), [name, input] as const);
  const photo = join(program.dataFolder, 'a photo.jpg');

  await program.chooseFiles([photo, photo]);
  const chosen = await program.call('shell.choosePhotos', {});
  expect(new Set(chosen?.tokens).size).toBe(2);
  expect(JSON.stringify(chosen)).not.toContain('photo.jpg');
  await program.chooseFiles([]);
  expect(await program.call('shell.choosePhotos', {})).toBeNull();

  await program.saveAs(join(program.dataFolder, 'report.pdf'));
  expect(await program.call('shell.choosePdf', { suggestedName: '../../a/b:c' })).toMatchObject({ token: /./ });
  expect(await ask('shell.showFile', { path: '/etc/passwd' })).toMatchObject({ error: { code: 'not-found' } });
  expect(await ask('shell.choosePdf', { suggestedName: 7 })).toMatchObject({ error: { code: 'invalid-input' } });
  expect(await ask('no.such', {})).toMatchObject({ error: { code: 'unknown-operation' } });
  expect(await ask('hasOwnProperty', {})).toMatchObject({ error: { code: 'unknown-operation' } });
});

test('a recorder that is killed is missed, said, and replaced', async ({ program }) => {
  const { page } = program;
  await program.call('app.begin', { with: 'empty' });
  await program.call('person.add', { name: 'A. Bench', trade: 'mechanic' });
  await page.evaluate(() => {
    const heard: string[] = [];
    Reflect.set(window, 'heard', heard);
    Reflect.get(window, 'witness').on((event: { event: string; state?: string }) => {
      if (event.event === 'recorder') heard.push(event.state ?? '');
    });
  });
  const unanswered = page.evaluate(() => {
    const { witness } = window as unknown as { witness: { call(name: string, input: unknown): Promise<unknown> } };
    return Promise.all(Array.from({ length: 200 }, () => witness.call('machine.floor', {})));
  });
  await program.killRecorder();
  // Each of the calls in flight has an answer: its own, or that the recorder stopped.
  for (const answer of await unanswered) {
    expect(answer).toMatchObject(
      Reflect.get(Object(answer), 'ok') ? { ok: true } : { error: { code: 'recorder-stopped' } },
    );
  }
  await expect.poll(() => page.evaluate(() => Reflect.get(window, 'heard'))).toEqual(['gone', 'restarted']);
  expect((await program.call('app.state', {})).people.map(({ name }) => name)).toContain('A. Bench');
});

test('when the shell is killed the recorder ends, and its folder is free again', async ({ program, launch }) => {
  await program.call('app.begin', { with: 'empty' });
  const holder = JSON.parse(readFileSync(join(program.dataFolder, 'holder.json'), 'utf8'));
  expect(holder.pid).toBe(program.recorderPid);
  await program.killShell();
  await until('the recorder has ended', () => !isAlive(program.recorderPid) || undefined);
  const again = await launch();
  expect(await again.call('app.state', {})).toMatchObject({ started: true });
});

test('a second start on the same folder brings up the first window', async ({ program, launch }) => {
  await expect(launch()).rejects.toThrow();
  expect(await program.call('app.state', {})).toMatchObject({ started: false });
});

test('the window comes back where it was left', async ({ program, launch }) => {
  const bounds = { x: 120, y: 90, width: 1200, height: 800 };
  await program.app.evaluate(
    ({ BrowserWindow }, bounds) => BrowserWindow.getAllWindows()[0]?.setBounds(bounds),
    bounds,
  );
  await program.close();
  const again = await launch(null);
  const found = await again.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds());
  expect(found).toEqual(bounds);
});
