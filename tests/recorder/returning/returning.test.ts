import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';

/** A loader with a crack that was declined and a leak that was mended, back after 210 h. */
const returning = async () => {
  const test = openTestRecorder();
  const { call } = test;
  await call('shop.change', { name: 'Kiln Yard Repairs', phone: '01 23' });
  const { id: personId } = await call('person.add', { name: 'Ada Quill', trade: 'mechanic' });
  const { machineId } = await addLoader(test);
  const meterId = (await call('machine.page', { id: machineId })).meters[0]?.id ?? null;
  const open = async (date: string, hours: number) =>
    (
      await call('visit.open', {
        machineId,
        date,
        personId,
        complaint: 'Look it over.',
        meter: { meterId, typed: String(hours), reading: hours, estimate: false },
        scope: [{ path: 'FRM' }],
      })
    ).visit.id;
  const visitId = await open('2026-06-09', 6050);
  const judged = {
    kind: 'condition',
    state: 'confirmed',
    safety: { severity: 1, probability: 'D' },
    urgency: 3,
    runWorse: false,
    damageClass: 3,
  } as const;
  const crack = await call('finding.add', {
    ...judged,
    visitId,
    defect: 'crack',
    methods: ['PT'],
    locations: ['FRM/LOADERTWR.R@near=PIN.2:30'],
    quantities: { length: { typed: '22 mm' } },
  });
  const leak = await call('finding.add', {
    ...judged,
    visitId,
    defect: 'sealleak',
    methods: ['V', 'F'],
    locations: ['HYD/CYL.boom.L'],
  });
  const root = await call('finding.add', {
    ...judged,
    visitId,
    defect: 'score',
    state: 'suspected',
    methods: ['V'],
    locations: ['HYD/CYL.boom.L/RODH'],
  });
  await call('finding.link', { fromId: root.id, toId: leak.id });
  const choice = await call('choice.add', { visitId, name: 'seal only' });
  for (const { id } of [crack, root]) await call('choice.dispose', { id: choice.id, findingId: id, is: 'left' });
  await call('choice.dispose', { id: choice.id, findingId: leak.id, is: 'fixed' });
  const told = { visitId, by: 'Nils Aspen', statement: 'I was told. I choose so.' } as const;
  await call('decision.take', { ...told, choiceId: choice.id, decision: 'accepted' });
  await call('decision.take', { ...told, findingId: crack.id, decision: 'declined', words: 'after the harvest' });
  const next = await open('2026-10-07', 6260);
  const view = async (of = next) => {
    const found = await call('return.get', { visitId: of });
    if (found === null) throw new Error('nothing was before');
    return found;
  };
  return { ...test, machineId, visitId, next, open, crack, leak, root, view };
};

describe('a machine that is back', () => {
  it('shows what was left and what was mended, with hours, decision and what is due', async () => {
    const { view, crack, leak } = await returning();
    const { old, hoursSince } = await view();
    expect(hoursSince).toBe(210);
    expect(old).toHaveLength(3);
    const of = (id: string) => old.find(({ tag }) => tag.findingId === id);
    expect(of(crack.id)).toMatchObject({
      mended: false,
      decided: { decision: 'declined', words: 'after the harvest' },
      due: null,
      timesTold: 1,
    });
    expect(of(leak.id)).toMatchObject({ mended: true, due: null });
  });

  it('takes up what still stands under its number, and tells its growth by 100 hours', async () => {
    const { call, machineId, next, view, crack } = await returning();
    const { finding } = await call('return.answer', { visitId: next, findingId: crack.id, answer: 'grown' });
    expect(finding).toMatchObject({ number: crack.number, trackOf: crack.id });
    await call('finding.change', { id: finding?.id ?? '', quantities: { length: { typed: '31 mm' } } });
    const { old } = await view();
    // 22 to 31 mm over 210 h, each to 0.5 mm: 4.3 mm per 100 h. Source: the handbook's worked example of crack growth.
    expect(old.find(({ tag }) => tag.findingId === crack.id)?.sizes).toMatchObject([
      {
        was: '22\u202fmm',
        now: '31\u202fmm',
        change: '+9\u202fmm ±\u202f1\u202fmm, 4.3\u202fmm per 100\u202fh',
        state: 'worse',
      },
    ]);
    await call('finding.change', { id: finding?.id ?? '', quantities: { length: { typed: '23 mm' } } });
    expect((await view()).old.find(({ tag }) => tag.findingId === crack.id)?.sizes[0]?.state).toBe('no-change-told');
    // What was fitted there since is not the old one grown older.
    const path = crack.locations[0]?.split('@')[0] ?? '';
    await call('part.fit', { machineId, path, kind: 'new', fittedVisitId: next, fittedHours: null });
    expect((await view()).old.find(({ tag }) => tag.findingId === crack.id)?.sizes[0]).toMatchObject({
      state: 'not-comparable',
      change: 'not comparable: the part may have been changed between',
    });
  });

  it('closes what holds and what was replaced; nothing that was left is lost, however many visits say nothing of it', async () => {
    const { call, next, view, open, crack, leak, root } = await returning();
    await call('return.answer', { visitId: next, findingId: leak.id, answer: 'repaired-holds' });
    const third = await open('2026-12-01', 6300);
    expect((await view(third)).old.map(({ tag }) => tag.findingId).sort()).toEqual([crack.id, root.id].sort());
    await call('return.answer', { visitId: third, findingId: root.id, answer: 'part-replaced', part: 'used' });
    const page = await call('machine.page', { id: (await call('visit.get', { id: third })).machine.id });
    expect(page.fittedParts).toMatchObject([{ path: 'HYD/CYL.boom.L/RODH', kind: 'used', fittedVisitId: third }]);
    // Answered again, the part that was noted with the first answer goes with it.
    await call('return.answer', { visitId: third, findingId: root.id, answer: 'same' });
    expect((await call('machine.page', { id: page.machine.id })).fittedParts).toEqual([]);
    const fourth = await open('2027-01-10', 6400);
    const { old } = await view(fourth);
    expect(old.map(({ tag, timesTold }) => [tag.number, timesTold]).sort()).toEqual([
      [1, 1],
      [3, 2],
    ]);
  });

  it('what was not looked at again is not confirmed by what was seen then, and says why', async () => {
    const { call, recorder, next, crack } = await returning();
    const bare = { visitId: next, findingId: crack.id, answer: 'not-re-examined' } as const;
    expect(await recorder.dispatch('window-1', 'return.answer', bare)).toMatchObject({
      ok: false,
      error: { code: 'invalid-input', field: 'because' },
    });
    const { finding } = await call('return.answer', { ...bare, because: 'no access' });
    expect(finding).toMatchObject({ state: 'suspected', number: crack.number });
    const again = await call('return.answer', { ...bare, answer: 'same', because: '' });
    expect(again.finding).toMatchObject({ id: finding?.id, state: 'confirmed' });
    // One step each: taking the first answer back as well leaves no trace of either.
    await call('undo.undo', { visitId: next });
    await call('undo.undo', { visitId: next });
    const record = await call('visit.get', { id: next });
    expect(record.findings).toEqual([]);
    expect(record.before?.old.every(({ answer }) => answer === null)).toBe(true);
  });

  it('proposes a finding of today at the same place, which then carries the number of then', async () => {
    const { call, next, view, crack } = await returning();
    const today = await call('finding.add', {
      visitId: next,
      kind: 'condition',
      defect: 'crack',
      locations: ['FRM/LOADERTWR.R'],
      state: 'suspected',
    });
    const { old } = await view();
    expect(old.find(({ tag }) => tag.findingId === crack.id)?.maybe).toMatchObject([
      { findingId: today.id, number: 4 },
    ]);
    const { finding } = await call('return.answer', {
      visitId: next,
      findingId: crack.id,
      answer: 'same',
      asFindingId: today.id,
    });
    expect(finding).toMatchObject({ id: today.id, number: crack.number, trackOf: crack.id, state: 'suspected' });
  });

  it('marks the same failure after a repair of ours, with the root that was left', async () => {
    const { call, next, view, leak } = await returning();
    const { finding } = await call('return.answer', { visitId: next, findingId: leak.id, answer: 'repaired-failed' });
    expect((await view()).repeats).toMatchObject([
      {
        findingId: finding?.id,
        earlierNumber: leak.number,
        mendedOn: '2026-06-09',
        hoursSince: 210,
        rootsLeft: [expect.stringContaining('rod')],
      },
    ]);
  });

  it('one reason answers all agreed items that nobody came to, in one step', async () => {
    const { call, machineId } = await returning();
    const scope = [
      { path: 'ENG' },
      { path: 'BRK' },
      { path: 'HYD', notExaminedBecause: 'no access' },
      { path: 'STEER' },
    ];
    const { visit } = await call('visit.open', { machineId, date: '2026-11-01', scope });
    const visitId = visit.id;
    await call('reading.fill', {
      visitId,
      sheet: 'MS-21',
      at: 'STEER/DRAG',
      inputs: { radius: '200 mm', arc: '64 mm' },
    });
    await call('scope.answerRest', { visitId, notExaminedBecause: 'not needed' });
    const reasons = async () =>
      (await call('visit.get', { id: visitId })).scope.map(({ path, notExaminedBecause }) => [
        path,
        notExaminedBecause,
      ]);
    expect(await reasons()).toEqual([
      ['ENG', 'not needed'],
      ['BRK', 'not needed'],
      ['HYD', 'no access'],
      ['STEER', null],
    ]);
    await call('undo.undo', { visitId });
    expect((await reasons()).map(([, because]) => because)).toEqual([null, null, 'no access', null]);
  });

  it('compares readings of one sheet at one place, not across a part that was changed', async () => {
    const { call, visitId, next, view, machineId } = await returning();
    const fill = (of: string, arc: string) =>
      call('reading.fill', { visitId: of, sheet: 'MS-21', at: 'STEER/DRAG', inputs: { radius: '200 mm', arc } });
    await fill(visitId, '64 mm');
    await fill(next, '82 mm');
    const { readings } = await view();
    // 64 and 82 mm of arc at 200 mm: 18.335° and 23.491°. Source: the handbook's worked example of steering play.
    expect(readings.find(({ what }) => what === 'play')).toMatchObject({
      was: expect.stringContaining('18.3'),
      now: expect.stringContaining('23.5'),
      state: 'worse',
    });
    await call('part.fit', { machineId, path: 'STEER/DRAG', kind: 'new', fittedVisitId: visitId, fittedHours: 6050 });
    expect((await view()).readings[0]).toMatchObject({
      state: 'not-comparable',
      change: expect.stringContaining('the part may have been changed'),
    });
  });

  it('the report cannot be issued before each is answered, and has a page that says so', async () => {
    const { call, recorder, next, crack, leak, root } = await returning();
    const needed = async () =>
      (await call('report.preview', { visitId: next })).missing.filter(({ at }) => at.place === 'before').length;
    expect(await needed()).toBe(3);
    await call('return.answer', { visitId: next, findingId: leak.id, answer: 'repaired-holds' });
    await call('return.answer', { visitId: next, findingId: root.id, answer: 'not-re-examined', because: 'no access' });
    const { finding } = await call('return.answer', { visitId: next, findingId: crack.id, answer: 'grown' });
    await call('finding.change', { id: finding?.id ?? '', quantities: { length: { typed: '31 mm' } } });
    expect(await needed()).toBe(0);
    const token = randomUUID();
    const path = join(freshFolder(), 'since.pdf');
    recorder.offer({ token, path, for: 'write' });
    await call('report.print', { visitId: next, token });
    const text = execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
    expect(text).toContain('Since last time');
    expect(text).toContain('Mended, and it holds.');
    expect(text).toContain('Not looked at again: no access.');
    expect(text).toMatch(/Length 22.mm then, 31.mm now: \+9.mm ±.1.mm, 4\.3.mm per 100.h\./);
    expect(text).toContain('It was declined (“after the harvest”).');
  }, 60_000);
});
