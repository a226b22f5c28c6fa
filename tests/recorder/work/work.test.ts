import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';

/** A loader with a do-not-operate hose and a dead gauge; the choice that was taken mends the hose. */
const worked = async () => {
  const test = openTestRecorder();
  const { call } = test;
  const { machineId } = await addLoader(test);
  const meterId = (await call('machine.page', { id: machineId })).meters[0]?.id ?? null;
  const { visit } = await call('visit.open', {
    machineId,
    date: '2026-06-09',
    complaint: 'Drips.',
    meter: { meterId, typed: '6050', reading: 6050, estimate: false },
    scope: [{ path: 'HYD' }],
  });
  const visitId = visit.id;
  const hose = await call('finding.add', {
    visitId,
    defect: 'hosecover',
    locations: ['HYD/HOSE.boom.L@end=A;z=340'],
    state: 'suspected',
    methods: ['V'],
    safety: { severity: 1, probability: 'C' },
    urgency: 2,
    runWorse: false,
    damageClass: 3,
    action: 'replace',
    actionWords: 'fit a new hose',
  });
  const gauge = await call('finding.add', {
    visitId,
    defect: 'inop',
    locations: ['INST/TEMP'],
    state: 'suspected',
    methods: ['F'],
    safety: 'none',
    urgency: 3,
    runWorse: false,
    damageClass: 2,
    watchFor: 'the hose of a hand thermometer',
  });
  const choice = await call('choice.add', { visitId, name: 'hose only' });
  await call('choice.dispose', { id: choice.id, findingId: hose.id, is: 'fixed' });
  await call('choice.dispose', { id: choice.id, findingId: gauge.id, is: 'left' });
  await call('decision.take', {
    visitId,
    choiceId: choice.id,
    decision: 'accepted',
    by: 'Nils Aspen',
    statement: 'So.',
  });
  const work = async () => call('work.get', { visitId });
  const text = async () => {
    const token = randomUUID();
    const path = join(freshFolder(), 'work.pdf');
    test.recorder.offer({ token, path, for: 'write' });
    await call('report.print', { visitId, token });
    return execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
  };
  return { ...test, machineId, visitId, hose, gauge, work, text };
};

describe('the work done', () => {
  it('is asked for as the choice that was taken planned it; what is only planned still stands', async () => {
    const { call, visitId, hose, gauge, work } = await worked();
    expect(await work()).toMatchObject({
      items: [],
      planned: [{ findingId: hose.id, is: 'fixed' }],
      doNotOperateLeft: [hose.id],
    });
    const item = await call('work.add', { visitId, findingId: hose.id, words: 'new hose, clamped clear of the tower' });
    expect(await work()).toMatchObject({ planned: [], unproven: [item.id], doNotOperateLeft: [] });
    expect((await work()).left.map(({ findingId }) => findingId)).toEqual([gauge.id]);
    await call('work.change', { id: item.id, outcome: 'not-done', because: 'the hose did not come' });
    expect(await work()).toMatchObject({ unproven: [], doNotOperateLeft: [hose.id] });
    await expect(call('work.add', { visitId, findingId: hose.id })).rejects.toThrow('work-exists');
    const other = await addLoader({ call }, 'TL-0002');
    await expect(call('work.add', { visitId: other.visitId, findingId: hose.id })).rejects.toThrow(
      'finding-of-another-visit',
    );
  });

  it('is asked for where the owner agreed to a finding by itself, until it is taken back', async () => {
    const { call, visitId, hose, gauge, work } = await worked();
    const told = { visitId, findingId: gauge.id, by: 'Per Lindqvist', statement: 'told' } as const;
    await call('decision.take', { ...told, decision: 'accepted' });
    expect((await work()).planned).toEqual([
      { findingId: hose.id, is: 'fixed' },
      { findingId: gauge.id, is: 'fixed' },
    ]);
    await call('decision.take', { ...told, decision: 'declined' });
    expect((await work()).planned).toEqual([{ findingId: hose.id, is: 'fixed' }]);
  });

  it('puts parts on the machine’s list in the place of what was there, and takes them off again', async () => {
    const { call, machineId, visitId, hose } = await worked();
    const before = await call('part.fit', {
      machineId,
      path: 'HYD/HOSE.boom.L',
      kind: 'used',
      fittedVisitId: null,
      fittedHours: 5000,
    });
    const item = await call('work.add', { visitId, findingId: hose.id });
    const fit = { path: 'HYD/HOSE.boom.L', kind: 'new' } as const;
    const fitted = await call('work.addPart', { id: item.id, words: 'hose 1/2 in, 1.2 m', fit });
    const parts = async () => (await call('machine.page', { id: machineId })).fittedParts;
    expect(await parts()).toMatchObject([
      { id: before.id, removedVisitId: visitId, removedHours: 6050 },
      { path: 'HYD/HOSE.boom.L', kind: 'new', fittedVisitId: visitId, fittedHours: 6050, removedVisitId: null },
    ]);
    await call('undo.undo', { visitId });
    expect(await parts()).toMatchObject([{ id: before.id, removedVisitId: null }]);
    await call('undo.redo', { visitId });
    await call('work.removePart', { id: item.id, partId: fitted.parts[0]?.id ?? '' });
    expect(await parts()).toMatchObject([{ id: before.id, removedVisitId: null, removedHours: null }]);
  });

  it('is shown by a reading of the same visit; a reading that is taken off shows nothing any more', async () => {
    const { call, visitId, hose, work } = await worked();
    const item = await call('work.add', { visitId, findingId: hose.id });
    const reading = await call('reading.fill', {
      visitId,
      sheet: 'MS-20',
      at: 'HYD/CYL.boom.L',
      inputs: { bore: '100 mm', rod: '50 mm', drift: '1 mm', minutes: '10' },
    });
    await call('work.prove', { id: item.id, readingId: reading.id });
    expect((await work()).unproven).toEqual([]);
    await call('reading.remove', { id: reading.id });
    expect((await work()).unproven).toEqual([item.id]);
    await call('undo.undo', { visitId });
    expect((await work()).unproven).toEqual([]);
  });

  it('the hand-over page says what was proved, how it may be used, what to watch and when to come back; page one follows it', async () => {
    const { call, visitId, hose, text } = await worked();
    expect(await text()).toContain('Do not operate this machine');
    const item = await call('work.add', { visitId, findingId: hose.id, words: 'fitted a new hose' });
    await call('work.addPart', { id: item.id, words: 'hose, two-wire', amount: '2' });
    await call('handOver.write', {
      visitId,
      limits: 'Full use with a hand thermometer on the top tank.',
      handedTo: 'Nils Aspen',
    });
    await call('handOver.write', { visitId, comeBack: 'After 50 h, to look at the hose again.' });
    const said = await text();
    expect(said).not.toContain('Do not operate this machine');
    expect(said).toContain('The work done');
    expect(said).toContain('Went in: 2 × hose, two-wire.');
    expect(said).toContain('Handed over to Nils Aspen.');
    expect(said).toContain('Mended, and not tested after the work: finding 1.');
    expect(said).toMatch(/Still there: finding 2, /);
    expect(said).toContain('Full use with a hand thermometer on the top tank.');
    expect(said).toContain('Finding 2: the hose of a hand thermometer.');
    expect(said).toContain('After 50 h, to look at the hose again.');
  }, 60_000);

  it('the report warns of what is still open: a caution goes with what called it, or says what remains', async () => {
    const { call, visitId, hose, text } = await worked();
    const jet = 'Fine jets pierce skin unseen.';
    await call('decision.take', {
      visitId,
      findingId: hose.id,
      decision: 'declined',
      by: 'Nils Aspen',
      statement: 'Not the hose.',
    });
    expect(await text()).toContain(jet);
    const item = await call('work.add', { visitId, findingId: hose.id, outcome: 'partly', because: 'no clamp' });
    expect(await text()).toMatch(/Fine jets .*Because of finding 1 \(mended in part: no clamp\)\./);
    await call('work.change', { id: item.id, outcome: 'done' });
    const said = await text();
    expect(said).not.toContain(jet);
    expect(said).toMatch(/will not be seen.* Because of finding 2\./);
  }, 60_000);

  it('a later visit asks whether what was really mended holds', async () => {
    const { call, machineId, visitId, hose, gauge } = await worked();
    await call('work.add', { visitId, findingId: hose.id, outcome: 'not-done', because: 'no hose' });
    await call('work.add', { visitId, findingId: gauge.id });
    const next = (await call('visit.open', { machineId, date: '2026-09-01' })).visit.id;
    const old = (await call('return.get', { visitId: next }))?.old ?? [];
    expect(new Map(old.map(({ tag, mended }) => [tag.findingId, mended]))).toEqual(
      new Map([
        [hose.id, false],
        [gauge.id, true],
      ]),
    );
  });
});
