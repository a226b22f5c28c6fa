import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { isAlive, until } from '../support/app/processes.ts';
import type { Program } from '../support/app/program.ts';

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
  const heard = await listen(page);
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
  await expect
    .poll(heard)
    .toEqual([
      expect.objectContaining({ state: 'gone', reason: 'SIGKILL' }),
      expect.objectContaining({ state: 'restarted', reason: null }),
    ]);
  await expect(page.getByText(/recorder stopped and was started again/i)).toBeVisible();
  expect((await program.call('app.state', {})).people.map(({ name }) => name)).toContain('A. Bench');
  await page.getByRole('button', { name: 'Put away' }).click();
  await expect(page.getByText(/recorder stopped/i)).toBeHidden();
});

test('photos come untouched, in part where asked, and a canvas that drew one can be read', async ({ program }) => {
  program.allowErrors(/404/);
  await program.call('app.begin', { with: 'demo' });
  const floor = await program.call('machine.floor', {});
  const visitId = floor.find(({ shots }) => shots > 0)?.visitId ?? '';
  const [shot] = (await program.call('visit.get', { id: visitId })).shots;
  const digest = shot?.digest ?? '';

  const served = await program.page.evaluate(async (digest) => {
    const whole = await fetch(`photo://original/${digest}`);
    const bytes = await whole.arrayBuffer();
    const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
    const part = await fetch(`photo://original/${digest}`, { headers: { range: 'bytes=0-2' } });
    const unknown = await fetch(`photo://original/${'0'.repeat(64)}`);
    const image = new Image();
    image.crossOrigin = 'anonymous';
    image.src = `photo://thumb/${digest}`;
    await new Promise((loaded, failed) => {
      image.onload = loaded;
      image.onerror = failed;
    });
    const canvas = document.createElement('canvas');
    canvas.getContext('2d')?.drawImage(image, 0, 0);
    return {
      hash: [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join(''),
      type: whole.headers.get('content-type'),
      part: [part.status, ...new Uint8Array(await part.arrayBuffer())],
      unknown: unknown.status,
      drawn: canvas.toDataURL().length,
    };
  }, digest);
  // Source of the three bytes: a JPEG begins with SOI and the next marker (ISO/IEC 10918-1, B.1.1).
  expect(served).toMatchObject({ hash: digest, type: 'image/jpeg', part: [206, 0xff, 0xd8, 0xff], unknown: 404 });
  expect(served.drawn).toBeGreaterThan(1000);
});

test('an item of the menu sends its command to the window', async ({ program }) => {
  const heard = await listen(program.page);
  await program.pickFromMenu('Find');
  await expect.poll(heard).toEqual([{ event: 'command', name: 'find.open' }]);
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
  const boundsOf = ({ app }: Program) =>
    app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds());
  // The display moves and resizes a window in its own time.
  await expect.poll(() => boundsOf(program)).toEqual(bounds);
  await program.close();
  const again = await launch(null);
  await expect.poll(() => boundsOf(again)).toEqual(bounds);
});

/** Keeps what the window is told of its recorder and its menu, from now on. */
async function listen(page: Page): Promise<() => Promise<unknown[]>> {
  await page.evaluate(() => {
    const heard: unknown[] = [];
    Reflect.set(window, 'heard', heard);
    Reflect.get(window, 'witness').on((event: { event: string }) => {
      if (['recorder', 'command'].includes(event.event)) heard.push(event);
    });
  });
  return () => page.evaluate(() => Reflect.get(window, 'heard'));
}
