import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { build } from '../../../electron/recorder/database/connection.ts';
import { keyColumn, type RecordTable } from '../../../electron/recorder/database/tables.ts';
import { firstBreak } from '../../../electron/recorder/journal/chain.ts';
import type { Row, RowChange } from '../../../electron/recorder/journal/change.ts';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

const tables: readonly RecordTable[] = [
  'person',
  'machine',
  'ownership',
  'meter',
  'layout',
  'visit',
  'scope_item',
  'finding',
  'finding_location',
  'finding_link',
  'reading',
  'proof',
];

const entries = ({ recorder }: TestRecorder) => recorder.db.all(build.selectFrom('journal').selectAll().orderBy('seq'));

/** What the journal alone says the tables hold: its entries played from nothing. */
const played = (test: TestRecorder): Map<string, Row> => {
  const rows = new Map<string, Row>();
  for (const entry of entries(test)) {
    for (const change of JSON.parse(entry.changes) as RowChange[]) {
      const key = `${change.table}/${change.id}`;
      if ('added' in change) rows.set(key, change.added);
      else if ('removed' in change) rows.delete(key);
      else if ('updated' in change) {
        const to = Object.fromEntries(Object.entries(change.updated).map(([column, [, value]]) => [column, value]));
        rows.set(key, { ...rows.get(key), ...to });
      }
    }
  }
  return rows;
};

const stored = ({ recorder }: TestRecorder): Map<string, Row> => {
  const rows = new Map<string, Row>();
  for (const table of tables) {
    for (const row of recorder.db.all<Row>(build.selectFrom(table as 'person').selectAll() as never)) {
      rows.set(`${table}/${row[keyColumn(table)]}`, row);
    }
  }
  return rows;
};

const onlyListed = (rows: Map<string, Row>) =>
  new Map([...rows].filter(([key]) => tables.includes(key.split('/')[0] as RecordTable)).sort());

describe('the journal', () => {
  it('says the same as the tables after 1,000 interleaved calls from two windows, refusals and undos among them', async () => {
    const test = openTestRecorder();
    const { visitId, machineId } = await addLoader(test);
    const windows = [test.as('window-1'), test.as('window-2')];
    const random =
      fc.sample(fc.array(fc.tuple(fc.nat(8), fc.nat(1), fc.nat(9999)), { minLength: 1000, maxLength: 1000 }), {
        numRuns: 1,
        seed: 7,
      })[0] ?? [];
    const findings: string[] = [];
    const refused = { count: 0 };
    const oneOf = (seed: number) => findings[seed % Math.max(findings.length, 1)] ?? 'none';
    const calls = random.map(([kind, window, seed]) => async () => {
      const call = windows[window] ?? test.call;
      try {
        if (kind <= 1)
          findings.push(
            (await call('finding.add', { visitId, defect: 'crack', locations: [`ENG/LNR.${1 + (seed % 4)}`] })).id,
          );
        else if (kind === 2)
          await call('finding.change', { id: oneOf(seed), words: `words ${seed}`, urgency: (seed % 6) as 0 });
        else if (kind === 3)
          await call('finding.change', { id: oneOf(seed), quantities: { len: { typed: `${seed} mm` } } });
        else if (kind === 4) await call('finding.link', { fromId: oneOf(seed), toId: oneOf(seed * 7 + 1) });
        else if (kind === 5) await call('undo.undo', { visitId });
        else if (kind === 6) await call('undo.redo', { visitId });
        else if (kind === 7) await call('visit.change', { id: visitId, complaint: `says ${seed}` });
        else await call('machine.change', { id: machineId, plate: { bay: `bay ${seed % 9}` } });
      } catch (error) {
        if (!(error instanceof Error) || !('wire' in error) || error.message === 'internal') throw error;
        refused.count += 1;
      }
    });
    // Begun together, so that calls of both windows are under way at once.
    for (let at = 0; at < calls.length; at += 20) await Promise.all(calls.slice(at, at + 20).map((run) => run()));

    expect(refused.count).toBeGreaterThan(10);
    expect(refused.count).toBeLessThan(700);
    expect([...onlyListed(played(test))]).toEqual([...onlyListed(stored(test))]);
    expect(firstBreak(entries(test))).toBeNull();
  });

  it('tells at which entry it was tampered with', async () => {
    const test = openTestRecorder();
    await addLoader(test);
    await test.call('person.add', { name: 'Ada Quill', trade: 'mechanic' });
    const all = entries(test);
    expect(firstBreak(all)).toBeNull();
    const forged = all.map((entry) => (entry.seq === 2 ? { ...entry, at_ms: entry.at_ms + 1 } : entry));
    expect(firstBreak(forged)).toBe(2);
    expect(firstBreak(all.filter(({ seq }) => seq !== 2))).toBe(3);
  });

  it('holds no word of an owner, only digests', async () => {
    const test = openTestRecorder();
    await addLoader(test);
    const text = entries(test)
      .map(({ changes }) => changes)
      .join('\n');
    expect(text).toContain('"owner"');
    expect(text).not.toContain('Nils Aspen');
  });

  it('cannot be changed, not even by SQL', async () => {
    const test = openTestRecorder();
    await addLoader(test);
    expect(() => test.recorder.db.all(build.updateTable('journal').set({ at_ms: 0 }).returningAll() as never)).toThrow(
      /append-only/,
    );
    expect(() => test.recorder.db.all(build.deleteFrom('journal').returningAll() as never)).toThrow(/append-only/);
  });
});
