import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';
import { openTestRecorder } from '../../support/test-recorder.ts';

/**
 * Worked cases of the trade's handbook, entered through the real recorder: what each choice leaves, what will return, what
 * is left undecided and what is carried over were written down beside each case before this program existed.
 */
const folder = new URL('../scenarios/', import.meta.url);
const files = readdirSync(folder).filter((name) => /^s\d.*\.json$/.test(name));

it('finds all eight files', () => {
  expect(files).toHaveLength(8);
});

describe.each(files)('%s', (name) => {
  const url = new URL(name, folder);
  const scenario = Scenario.parse(JSON.parse(readFileSync(url, 'utf8')));
  const expected = scenario.expect?.visits ?? [];

  it('comes out of the recorder as the handbook says', { timeout: 120_000 }, async () => {
    const { recorder, call } = openTestRecorder();
    recorder.offer({ token: name, path: fileURLToPath(url), for: 'read' });
    const applied = await call('scenario.apply', { token: name });
    expect(applied.leftOut).toEqual([]);

    for (const wanted of expected) {
      const source = scenario.visits.find(({ id }) => id === wanted.visit);
      const visitId = applied.visits[wanted.visit] ?? '';
      const nameOf = (id: string) =>
        Object.entries(applied.findings)
          .find(([key, recordId]) => recordId === id && key.startsWith(`${wanted.visit}/`))?.[0]
          .split('/')[1];
      const got = await call('choices.get', { visitId });

      const byName = new Map(got.choices.map((choice) => [choice.name, choice]));
      const seen = wanted.choices.map(({ choice }) => {
        const view = byName.get(choice);
        if (view === undefined) throw new Error(`no choice ${choice}`);
        return {
          choice,
          left: view.left.map(({ findingId, tier }) => ({ id: nameOf(findingId), tier: `T${tier}` })),
          highestLevelLeft: view.highestLevelLeft,
          doNotOperateLeft: view.doNotOperateLeft.map(nameOf),
          willReturn: view.willReturn.map(({ findingId, rootsLeft }) => ({
            finding: nameOf(findingId),
            rootsLeft: rootsLeft.map(nameOf),
          })),
        };
      });
      expect(seen, `${name} ${wanted.visit}`).toEqual(wanted.choices);
      expect(got.choices).toHaveLength(source?.choices?.length ?? 0);
      expect(got.choices.filter(({ chosen }) => chosen).map((choice) => choice.name)).toEqual(
        (source?.choices ?? []).filter(({ chosen }) => chosen).map((choice) => choice.name),
      );

      // Each ranked finding stands in each choice exactly once.
      for (const { dispositions } of got.choices) {
        expect(dispositions.map(({ findingId }) => nameOf(findingId))).toEqual(wanted.order.map(({ id }) => id));
      }

      expect(got.undecided.map(nameOf).sort()).toEqual([...wanted.undecided].sort());
      // `because` is the case's own remark, in words that no rule makes.
      const carried = (wanted.carriedOver ?? []).map(({ because: _, ...rest }) => rest);
      expect(
        got.carriedOver
          .map(({ findingId, tierBefore, tierNow, decidedBefore: _, ...rest }) => ({
            finding: nameOf(findingId),
            ...rest,
            tierBefore: `T${tierBefore}`,
            tierNow: `T${tierNow}`,
          }))
          .sort((a, b) => String(a.finding).localeCompare(String(b.finding))),
      ).toEqual(carried);

      expect(got.suspicions.map(({ what, closedBecause, evidence }) => [what, closedBecause, evidence.length])).toEqual(
        (source?.suspicions ?? []).map(({ what, closed, evidence }) => [what, closed ?? null, evidence.length]),
      );
      expect(got.decisions.filter(({ findingId }) => findingId !== null).map(({ decision }) => decision)).toEqual(
        (source?.decisions ?? []).map(({ decision }) => decision),
      );
      for (const { statement, covers } of got.decisions) {
        expect(covers).toBe(true);
        expect(statement).toMatch(/^I, .+/);
      }
    }
  });
});
