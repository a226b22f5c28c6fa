import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compareLocations } from '../../../shared-lib/parts/compare-locations.ts';
import { residual } from '../../../shared-lib/ranking/residual.ts';
import { standingOf } from '../../../shared-lib/ranking/standing.ts';
import { toRankable } from '../../../shared-lib/ranking/to-rankable.ts';
import { dispositionsOf } from '../../../shared-lib/scenario/dispositions.ts';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';
import { toRecords } from '../../../shared-lib/scenario/to-records.ts';

/**
 * Worked cases of the trade's handbook (seven stories and a set of small probes of the rule), with the order, tiers, named
 * conditions, coverage and what each choice leaves, written down beside each before this program existed.
 */
const folder = new URL('../scenarios/', import.meta.url);
const files = readdirSync(folder).filter((name) => /^s\d.*\.json$/.test(name));

const tierName = (tier: number) => `T${tier}`;

it('finds all eight files', () => {
  expect(files).toHaveLength(8);
});

describe.each(files)('%s', (name) => {
  const scenario = Scenario.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')));
  const records = toRecords(scenario, (what) => what);
  const { layout } = records.layout;
  const expected = scenario.expect?.visits ?? [];

  it('expects something of every visit', () => {
    expect(expected.map(({ visit }) => visit)).toEqual(records.visits.map((visit) => visit.name));
  });

  describe.each(expected)('visit $visit', (wanted) => {
    const at = records.visits.findIndex((visit) => visit.name === wanted.visit);
    const record = records.visits[at];
    const source = scenario.visits[at];
    if (record === undefined || source === undefined) throw new Error(`no visit ${wanted.visit}`);
    const nameOf = (id: string) => [...record.findingIdOf].find(([, recordId]) => recordId === id)?.[0];
    const standing = standingOf({ ...record, layout });

    it('stands in the order of the handbook, each in its tier', () => {
      expect(standing.lines.map((line) => [nameOf(line.findingId), tierName(line.tier)])).toEqual(
        wanted.order.map(({ id, tier }) => [id, tier]),
      );
    });

    it('names the do-not-operate conditions, also where they are not followed', () => {
      expect(standing.lines.map((line) => line.named)).toEqual(wanted.order.map(({ named }) => named ?? null));
    });

    it('counts what was examined', () => {
      expect(standing.coverage).toEqual(wanted.coverage);
    });

    it('says of every line why it stands there, and lacks nothing of a finished record', () => {
      for (const line of standing.lines) {
        expect(line.why).toMatch(/^[A-Z].{10,}\.$/);
        expect(line.missing).toEqual([]);
      }
    });

    it.each(wanted.choices)('choice "$choice" leaves what the handbook says', (choice) => {
      const chosen = source.choices?.find((other) => other.name === choice.choice);
      if (chosen === undefined) throw new Error(`no choice ${choice.choice}`);
      const { use } = record.visit;
      const left = residual(
        {
          findings: record.findings.flatMap(
            (finding) => toRankable(finding, { layout, use, proofs: record.proofs }) ?? [],
          ),
          causes: record.links,
          use,
          comparePlaces: (a, b) => compareLocations(a, b, layout),
        },
        dispositionsOf(chosen, record.findingIdOf),
      );
      expect(left.left.map(({ finding, tier }) => ({ id: nameOf(finding.id), tier: tierName(tier) }))).toEqual(
        choice.left,
      );
      expect(left.highestLevelLeft).toBe(choice.highestLevelLeft);
      expect(left.doNotOperateLeft.map(nameOf)).toEqual(choice.doNotOperateLeft);
      expect(
        left.willReturn.map(({ findingId, rootsLeft }) => ({
          finding: nameOf(findingId),
          rootsLeft: rootsLeft.map(nameOf),
        })),
      ).toEqual(choice.willReturn);
    });
  });
});
