import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { databaseFile } from '../../../electron/recorder/database/open.ts';
import { freshFolder } from '../../support/test-recorder.ts';
import { startRecorder } from './start-recorder.ts';

const calls = 60;

it('answers the first of many calls before it has worked through the last', async () => {
  const dataFolder = freshFolder();
  const child = await startRecorder(dataFolder);
  const reader = new Database(databaseFile(dataFolder), { readonly: true });
  const count = reader.prepare('SELECT count(*) FROM person').pluck();
  let atFirstAnswer = 0;
  await Promise.all(
    Array.from({ length: calls }, async (_, number) => {
      await child.call('person.add', { name: `Ada ${number}`, trade: 'mechanic' });
      atFirstAnswer ||= Number(count.get());
    }),
  );
  expect(Number(count.get())).toBe(calls);
  expect(atFirstAnswer).toBeGreaterThan(0);
  expect(atFirstAnswer).toBeLessThan(calls);
  reader.close();
});
