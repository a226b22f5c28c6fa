import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it, onTestFinished } from 'vitest';
import { Decoder } from '../../../electron/recorder/photos/decoder.ts';
import { refusalOf } from './photo-room.ts';

const unruly = (): Decoder => {
  const decoder = new Decoder({
    childModule: join(import.meta.dirname, 'unruly-child.ts'),
    children: 1,
    takeMs: 400,
    mostBytes: 300_000_000,
  });
  onTestFinished(() => decoder.close());
  return decoder;
};

const job = (behaviour: string) =>
  ({ kind: 'take', path: behaviour, picture: 'jpeg', thumbPath: '/nowhere/t', screenPath: '/nowhere/s' }) as const;

it('gives a photo up that takes too long, and goes on with the next', async () => {
  const decoder = unruly();
  const both = await Promise.all(['hang', 'hang'].map((what) => refusalOf(decoder.run(job(what), `${what}.jpg`))));
  expect(both).toEqual(Array(2).fill({ code: 'photo-decoder-gave-up', details: { name: 'hang.jpg', reason: 'time' } }));
});

it.skipIf(process.platform !== 'linux')(
  'gives a photo up that takes too much memory (measured on Linux only)',
  async () => {
    const decoder = new Decoder({
      childModule: join(import.meta.dirname, 'unruly-child.ts'),
      takeMs: 20_000,
      mostBytes: 300_000_000,
    });
    onTestFinished(() => decoder.close());
    expect(await refusalOf(decoder.run(job('bloat'), 'bloat.jpg'))).toMatchObject({ details: { reason: 'memory' } });
  },
);

it('calls a photo damaged that crashes its decoder, and goes on with the next', async () => {
  const decoder = unruly();
  for (let time = 0; time < 2; time += 1) {
    expect(await refusalOf(decoder.run(job('crash'), 'crash.jpg'))).toEqual({
      code: 'photo-damaged',
      details: { name: 'crash.jpg', why: 'decoder-crashed' },
    });
  }
});

it('stops at once when told to', async () => {
  const decoder = unruly();
  const stop = new AbortController();
  const running = decoder.run(job('hang'), 'hang.jpg', stop.signal);
  const queued = decoder.run(job('hang'), 'hang.jpg', stop.signal);
  await wait(50);
  stop.abort();
  await expect(running).rejects.toThrow(/abort/i);
  await expect(queued).rejects.toThrow(/abort/i);
});
