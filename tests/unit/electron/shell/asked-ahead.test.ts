import { expect, it } from 'vitest';
import { AskedAhead } from '../../../../electron/shell/asked-ahead.ts';
import type { Answer } from '../../../../shared-lib/contract/bridge.ts';
import { firstQuestions, machinesAtFirst } from '../../../../shared-lib/contract/first-questions.ts';
import { operations } from '../../../../shared-lib/contract/operations.ts';

const recorder = (answer: Answer) => ({ call: () => Promise.resolve(answer) });
const floor = ['machine.floor', { most: machinesAtFirst }] as const;

it('gives each first answer once', async () => {
  const ahead = new AskedAhead();
  ahead.ask(recorder({ ok: true, output: [] }));
  expect(await ahead.take(...floor)).toEqual({ ok: true, output: [] });
  expect(await ahead.take(...floor)).toBeUndefined();
});

it('gives none once anything else was asked, or has changed', async () => {
  const ahead = new AskedAhead();
  ahead.ask(recorder({ ok: true, output: [] }));
  expect(await ahead.take('machine.add', {})).toBeUndefined();
  expect(await ahead.take(...floor)).toBeUndefined();
  ahead.ask(recorder({ ok: true, output: [] }));
  ahead.forget();
  expect(await ahead.take('app.state', {})).toBeUndefined();
});

it('asks again what was refused', async () => {
  const ahead = new AskedAhead();
  ahead.ask(recorder({ ok: false, error: { code: 'recorder-stopped', details: {} } }));
  expect(await ahead.take(...floor)).toBeUndefined();
});

it('asks only what changes nothing, in the words of the contract', () => {
  for (const { name, input } of firstQuestions) {
    const operation = Object.entries(operations).find(([each]) => each === name)?.[1];
    expect(operation?.effect).toBe('none');
    expect(operation?.input.safeParse(input).success).toBe(true);
  }
});
