import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addLoader, freshFolder, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

/** A machine of its own with a visit that lacks nothing. */
const addReadyVisit = async (test: TestRecorder, personId: string, serial: string) => {
  const { call } = test;
  const { machineId } = await addLoader(test, serial);
  const meterId = (await call('machine.page', { id: machineId })).meters[0]?.id ?? null;
  const { visit } = await call('visit.open', {
    machineId,
    date: '2026-05-12',
    complaint: 'Uses water.',
    personId,
    meter: { meterId, typed: '3860', reading: 3860, estimate: false },
    scope: [{ path: 'ENG' }],
  });
  const finding = await call('finding.add', {
    visitId: visit.id,
    defect: 'scale',
    words: 'white crust in the passage',
    locations: ['ENG/HD.1'],
    state: 'suspected',
    methods: ['V'],
    safety: 'none',
    urgency: 3,
    runWorse: true,
    damageClass: 2,
  });
  return { visitId: visit.id, finding };
};

const finished = async () => {
  const test = openTestRecorder();
  const { call, recorder } = test;
  await call('shop.change', { name: 'Kiln Yard Repairs', address: 'Orrenby', phone: '01 23' });
  const { id: personId } = await call('person.add', { name: 'Ada Quill', trade: 'mechanic' });
  const ready = await addReadyVisit(test, personId, 'TL-0001');
  const folder = freshFolder();
  const out = (name: string) => {
    const token = randomUUID();
    const path = join(folder, name);
    recorder.offer({ token, path, for: 'write' });
    return { token, path };
  };
  const verify = async (path: string) => {
    const token = randomUUID();
    recorder.offer({ token, path, for: 'read' });
    return await call('report.verify', { token });
  };
  return { ...test, ...ready, personId, out, verify };
};

describe('issuing', () => {
  it('freezes, numbers and seals; a correction is the next revision and says what it changes', async () => {
    const { call, visitId, finding, out, verify } = await finished();
    const first = out('first.pdf');
    const issued = await call('report.issue', { visitId, token: first.token });
    expect(issued).toMatchObject({ number: 1, revision: 1, path: first.path });
    expect(await verify(first.path)).toEqual({ state: 'genuine', number: 1, revision: 1, replacedBy: null });
    const said = execFileSync('pdfsig', ['-nocert', first.path], { encoding: 'utf8' });
    expect(said).toContain('Signature is Valid');
    expect(said).toContain('Total document signed');
    const text = execFileSync('pdftotext', ['-layout', first.path, '-'], { encoding: 'utf8' });
    expect(text).toContain('Report 1, revision 1');
    expect(text).not.toContain('Draft');

    // Frozen: not edited, not taken back, not issued twice.
    await expect(call('finding.change', { id: finding.id, words: 'other' })).rejects.toThrow('issued');
    await expect(call('undo.undo', { visitId })).rejects.toThrow('issued');
    await expect(call('report.issue', { visitId, token: out('again.pdf').token })).rejects.toThrow(
      'report-nothing-changed',
    );

    const next = await call('finding.supersede', { id: finding.id, because: 'scraped off: it is sealant' });
    await call('finding.change', {
      id: next.id,
      defect: 'badrepair',
      words: 'sealant',
      state: 'suspected',
      safety: 'none',
      urgency: 5,
      runWorse: false,
      damageClass: 4,
    });
    const second = out('second.pdf');
    expect(await call('report.issue', { visitId, token: second.token })).toMatchObject({ number: 1, revision: 2 });
    expect(await verify(second.path)).toMatchObject({ state: 'genuine', revision: 2, replacedBy: null });
    expect(await verify(first.path)).toMatchObject({ state: 'genuine', revision: 1, replacedBy: 2 });
    const corrected = execFileSync('pdftotext', ['-layout', second.path, '-'], { encoding: 'utf8' }).replace(
      /\s+/g,
      ' ',
    );
    expect(corrected).toContain('It replaces revision 1.');
    expect(corrected).toContain('Finding 2 is new');
    expect((await call('report.issued', { visitId })).map(({ revision }) => revision)).toEqual([1, 2]);
  }, 120_000);

  it('takes what is asked for at once in turn: a number each, one key, and none twice of one visit', async () => {
    const test = await finished();
    const { call, dataFolder, visitId, personId, out, verify } = test;
    const other = await addReadyVisit(test, personId, 'TL-0002');
    const files = [out('one.pdf'), out('other.pdf'), out('one again.pdf')];
    const asked = [visitId, other.visitId, visitId].map((id, at) =>
      call('report.issue', { visitId: id, token: files[at]?.token ?? '' }).then(
        ({ number }) => number,
        (error: Error) => error.message,
      ),
    );
    expect(await Promise.all(asked)).toEqual([1, 2, 'report-nothing-changed']);
    for (const [at, number] of [1, 2].entries()) {
      const path = files[at]?.path ?? '';
      expect(await verify(path)).toMatchObject({ state: 'genuine', number });
      const kept = join(dataFolder, 'issued', `report ${number}, revision 1.pdf`);
      expect(readFileSync(kept).equals(readFileSync(path))).toBe(true);
    }
  }, 120_000);

  it('is refused with the list of what is missing, and uses no number', async () => {
    const { call, visitId, out } = await finished();
    await call('finding.add', { visitId, words: 'half said' });
    const refused = await call('report.issue', { visitId, token: out('no.pdf').token }).catch((error) => error);
    expect(refused.wire.code).toBe('report-not-ready');
    expect(refused.wire.details.missing.join(' ')).toContain('Finding 2');
    expect(await call('report.issued', { visitId })).toEqual([]);
  });

  it('once deciding has begun, each finding left undecided is named with where to decide it, or the report says why', async () => {
    const { call, visitId, finding, out } = await finished();
    const other = await call('finding.add', {
      visitId,
      defect: 'restrict',
      locations: ['COOL/RAD'],
      state: 'suspected',
      methods: ['V'],
      safety: 'none',
      urgency: 3,
      runWorse: false,
      damageClass: 3,
    });
    const missing = async () => (await call('report.preview', { visitId })).missing.filter(({ needed }) => needed);
    expect(await missing()).toEqual([]);
    const statement = 'I was told of finding 1. I choose to leave it as it is.';
    const by = 'Nils Aspen';
    await call('decision.take', { visitId, findingId: finding.id, decision: 'declined', by, statement });
    expect(await missing()).toMatchObject([{ at: { place: 'decision', id: other.id } }]);
    const refused = await call('report.issue', { visitId, token: out('no.pdf').token }).catch((error) => error);
    expect(refused.wire).toMatchObject({
      code: 'report-not-ready',
      details: { missing: ['Finding 2: nobody has decided on it.'], decisionsOnly: true },
    });

    // A choice that is taken answers for what it speaks of, and for nothing else.
    const choice = await call('choice.add', { visitId, name: 'clean the radiator' });
    await call('decision.take', { visitId, choiceId: choice.id, decision: 'accepted', by, statement });
    expect(await missing()).toHaveLength(1);
    const spoken = await call('choice.add', { visitId, name: 'clean it and mend it' });
    await call('choice.dispose', { id: spoken.id, findingId: other.id, is: 'left' });
    await call('decision.take', { visitId, choiceId: spoken.id, decision: 'accepted', by, statement });
    expect(await missing()).toEqual([]);

    // What was told has changed: the decision covers it no longer.
    await call('finding.change', { id: finding.id, urgency: 0 });
    expect(await missing()).toMatchObject([{ at: { place: 'decision', id: finding.id } }]);
    const sealed = out('all-the-same.pdf');
    await call('report.issue', { visitId, token: sealed.token, undecidedBecause: 'the owner is at sea' });
    const text = execFileSync('pdftotext', ['-layout', sealed.path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
    expect(text).toContain('What was decided no longer covers finding 1. Issued all the same: the owner is at sea.');
  }, 60_000);

  it('tells an altered copy, and a draft that was never sealed', async () => {
    const { call, visitId, out, verify } = await finished();
    const sealed = out('sealed.pdf');
    await call('report.issue', { visitId, token: sealed.token });
    const bytes = readFileSync(sealed.path);
    bytes[bytes.length >> 1] = (bytes[bytes.length >> 1] ?? 0) ^ 1;
    writeFileSync(sealed.path, bytes);
    expect(await verify(sealed.path)).toMatchObject({ state: 'altered', number: null });
    const draft = out('draft.pdf');
    await call('report.print', { visitId, token: draft.token });
    expect(await verify(draft.path)).toMatchObject({ state: 'not signed' });
  }, 120_000);
});
