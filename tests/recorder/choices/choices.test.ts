import { expect, it } from 'vitest';
import { readBack, statementOnFinding } from '../../../shared-lib/choices/statement.ts';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

const refusal = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
  } catch (error) {
    return (error as Error).message;
  }
  return 'not refused';
};

/** A loader with two findings, the second caused by the first, and a choice that mends the second only. */
const withChoice = async (recorder: TestRecorder) => {
  const { call } = recorder;
  const { visitId, machineId } = await addLoader(recorder);
  const judged = {
    kind: 'condition',
    state: 'suspected',
    safety: 'none',
    urgency: 2,
    runWorse: true,
    damageClass: 3,
  } as const;
  const cause = await call('finding.add', {
    ...judged,
    visitId,
    defect: 'blockage',
    words: 'core is blocked',
    locations: ['COOL/RAD'],
  });
  const effect = await call('finding.add', {
    ...judged,
    visitId,
    defect: 'crack',
    words: 'crack between the seats',
    locations: ['ENG/HD.1'],
    ifLeft: 'It will open further.',
    action: 'replace',
  });
  await call('finding.link', { fromId: cause.id, toId: effect.id });
  const choice = await call('choice.add', { visitId, name: 'least to run' });
  await call('choice.dispose', { id: choice.id, findingId: effect.id, is: 'fixed' });
  return { visitId, machineId, cause, effect, choice };
};

const statement = 'I, Nils Aspen, was told of finding 2. I choose to leave it as it is.';

it('what a choice does not name is left, and a consequence mended without its root will return', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, cause, effect } = await withChoice(recorder);
  const { choices, undecided } = await call('choices.get', { visitId });
  expect(choices[0]?.dispositions.map(({ findingId, is }) => [findingId, is]).sort()).toEqual(
    [
      [cause.id, 'left'],
      [effect.id, 'fixed'],
    ].sort(),
  );
  expect(choices[0]?.left.map(({ findingId }) => findingId)).toEqual([cause.id]);
  expect(choices[0]?.willReturn).toEqual([{ findingId: effect.id, rootsLeft: [cause.id] }]);
  expect([...undecided].sort()).toEqual([cause.id, effect.id].sort());
});

it('the shop’s own words stand at the end of a statement, and are taken away by emptying them', async () => {
  const { call } = openTestRecorder();
  const { visitId } = await addLoader({ call });
  const finding = await call('finding.add', { visitId, kind: 'condition', state: 'suspected', words: 'weeps' });
  const statementWords = 'Keys are handed back against this signature';
  expect(await call('shop.change', { statementWords })).toMatchObject({ statementWords });
  const { standing } = await call('visit.get', { id: visitId });
  const { shop } = await call('app.state', {});
  const reader = { by: 'Nils Aspen', capacity: '', date: '2026-05-11', photos: [], howTold: '' };
  const read = readBack(
    statementOnFinding(finding, standing, { ...reader, shopWords: shop.statementWords }),
    'declined',
    '',
  );
  expect(read.split('\n').at(-1)).toBe('Keys are handed back against this signature.');
  expect(await call('shop.change', { statementWords: '' })).not.toHaveProperty('statementWords');
});

it('a finding stands in a choice once, however often it is disposed of', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, effect, choice } = await withChoice(recorder);
  const after = { safety: { severity: 4, probability: 'D' } } as const;
  const changed = await call('choice.dispose', {
    id: choice.id,
    findingId: effect.id,
    is: 'partly',
    after,
    why: 'plug',
  });
  expect(changed.dispositions).toEqual([{ findingId: effect.id, is: 'partly', after, why: 'plug' }]);
  const { choices } = await call('choices.get', { visitId });
  expect(choices[0]?.left.find(({ findingId }) => findingId === effect.id)?.level).toBe('Low');
});

it('a finding of another visit, an observation and a strange choice are refused', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, machineId, choice } = await withChoice(recorder);
  const later = await call('visit.open', { machineId, date: '2026-06-11' });
  const other = await call('finding.add', { visitId: later.visit.id, kind: 'condition', state: 'suspected' });
  expect(await refusal(call('choice.dispose', { id: choice.id, findingId: other.id, is: 'left' }))).toBe(
    'finding-of-another-visit',
  );
  const seen = await call('finding.add', { visitId, kind: 'observation', words: 'new paint', locations: ['FRM'] });
  expect(await refusal(call('choice.dispose', { id: choice.id, findingId: seen.id, is: 'fixed' }))).toBe(
    'finding-not-ranked',
  );
  expect(
    await refusal(
      call('decision.take', {
        visitId: later.visit.id,
        choiceId: choice.id,
        decision: 'accepted',
        by: 'Nils Aspen',
        statement,
      }),
    ),
  ).toBe('finding-of-another-visit');
  const suspicion = await call('suspicion.add', { visitId, what: 'head gasket' });
  expect(await refusal(call('suspicion.bear', { id: suspicion.id, findingId: other.id, bears: 'for' }))).toBe(
    'finding-of-another-visit',
  );
});

it('steps of choosing are taken back; a decision is not, nor what it rests on', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, effect, choice } = await withChoice(recorder);
  const line = { id: choice.id, kind: 'parts', words: 'head', amount: '1', price: '890.00' } as const;
  await call('choice.addCost', line);
  expect((await call('choices.get', { visitId })).choices[0]?.cost.total).toBe('890.00');
  expect((await call('undo.undo', { visitId })).done).toBe('choice.addCost');
  expect((await call('choices.get', { visitId })).choices[0]?.costs).toEqual([]);
  await call('undo.redo', { visitId });

  // Currency and tax are two fields: each says what is its own.
  await Promise.all([
    call('money.set', { visitId, currency: 'EUR' }),
    call('money.set', { visitId, taxPercent: '21' }),
  ]);
  expect((await call('choices.get', { visitId })).money).toEqual({ currency: 'EUR', taxPercent: '21' });

  const about = { visitId, decision: 'accepted', by: 'Nils Aspen', statement } as const;
  await call('decision.take', { ...about, choiceId: choice.id });
  expect((await call('choices.get', { visitId })).choices[0]?.chosen).toBe(true);
  expect((await call('undo.state', { visitId })).undo).not.toBe('decision.take');
  expect(await refusal(call('undo.undo', { visitId }))).toBe('decided');
  expect(await refusal(call('choice.remove', { id: choice.id }))).toBe('decided');
  expect(await refusal(call('choice.dispose', { id: choice.id, findingId: effect.id, is: 'left' }))).toBe('decided');
  expect(await refusal(call('money.set', { visitId, currency: 'EUR', taxPercent: '21' }))).toBe('decided');

  await call('decision.take', { ...about, choiceId: choice.id, decision: 'declined' });
  expect((await call('choices.get', { visitId })).choices[0]?.chosen).toBe(false);
});

it('a finding cannot be taken back under a decision on it', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId } = await addLoader(recorder);
  const finding = await call('finding.add', { visitId, kind: 'condition', state: 'suspected' });
  await call('decision.take', { visitId, findingId: finding.id, decision: 'declined', by: 'Nils Aspen', statement });
  expect(await refusal(call('undo.undo', { visitId }))).toBe('changed-by-another');
});

it('a decision needs the statement that was read back, who took it, and how its blank was completed', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, effect } = await withChoice(recorder);
  const take = (more: object) =>
    recorder.recorder.dispatch('window-1', 'decision.take', {
      visitId,
      findingId: effect.id,
      decision: 'declined',
      by: 'Nils Aspen',
      statement,
      ...more,
    });
  for (const [more, field] of [
    [{ by: '' }, 'by'],
    [{ decision: 'accepted-with-changes' }, 'completed'],
  ] as const) {
    expect(await take(more)).toMatchObject({ ok: false, error: { code: 'invalid-input', field } });
  }
  for (const nothingShown of [' ', undefined])
    expect(await take({ statement: nothingShown, signature: [[[0.1, 0.1]]] })).toMatchObject({
      ok: false,
      error: { code: 'statement-not-shown', field: 'statement' },
    });
  expect(await take({})).toMatchObject({ ok: true });
  const decided = await call('choices.get', { visitId });
  expect(decided.undecided).not.toContain(effect.id);
  expect(decided.decisions[0]).toMatchObject({ decision: 'declined', covers: true, statement });

  // A worse judgement is not what was told.
  await call('finding.change', { id: effect.id, safety: { severity: 1, probability: 'B' } });
  expect((await call('choices.get', { visitId })).decisions[0]?.covers).toBe(false);
});

it('the journal proves a decision without holding who decided and in what words', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, effect } = await withChoice(recorder);
  const words = 'I will tape it myself';
  await call('decision.take', {
    visitId,
    findingId: effect.id,
    decision: 'declined',
    by: 'Nils Aspen',
    statement,
    words,
  });
  const entries = await call('journal.of', { visitId });
  expect(entries.at(-1)?.operation).toBe('decision.take');
  const { default: Database } = await import('better-sqlite3');
  const db = new Database(`${recorder.dataFolder}/record.sqlite`, { readonly: true });
  const row = db.prepare('SELECT changes FROM journal ORDER BY seq DESC LIMIT 1').get() as { changes: string };
  db.close();
  expect(row.changes).toContain('"decision"');
  expect(row.changes).not.toContain('Nils');
  expect(row.changes).not.toContain('tape');
});

it('a suspicion that is given up keeps what bore on it', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, cause } = await withChoice(recorder);
  const { id } = await call('suspicion.add', { visitId, what: 'upper hose leaks at its clamp', at: 'COOL/HOSE.upper' });
  await call('suspicion.bear', { id, findingId: cause.id, bears: 'against', because: 'flow seen at the filler' });
  const closed = await call('suspicion.close', { id, because: 'flow is there' });
  expect(closed).toMatchObject({ closedBecause: 'flow is there', evidence: [{ bears: 'against' }] });
  expect(await call('suspicion.close', { id, because: null })).toMatchObject({
    closedBecause: null,
    evidence: [{ because: 'flow seen at the filler' }],
  });
});
