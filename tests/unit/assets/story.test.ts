import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measureShape } from '../../../shared-lib/calibration/measure.ts';
import { coverage } from '../../../shared-lib/coverage/coverage.ts';
import { compareLocations } from '../../../shared-lib/parts/compare-locations.ts';
import { speakLocation } from '../../../shared-lib/parts/speak-location.ts';
import { residual } from '../../../shared-lib/ranking/residual.ts';
import { standingOf } from '../../../shared-lib/ranking/standing.ts';
import { toRankable } from '../../../shared-lib/ranking/to-rankable.ts';
import { dispositionsOf } from '../../../shared-lib/scenario/dispositions.ts';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';
import { toRecords } from '../../../shared-lib/scenario/to-records.ts';

/**
 * The demo's three machines. What each file expects (order, tiers, what a choice leaves, coverage) was worked out from the
 * handbook's ranking rule by a second writing of it, in another language, that shares nothing with this program.
 */
const folder = new URL('../../../assets/demo/', import.meta.url);
const files = readdirSync(folder).filter((name) => /^\d.*\.json$/.test(name));
const scenarios = files.map((name) => Scenario.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8'))));

describe('the demo as a whole', () => {
  it('is three machines and five visits; one machine returns, one visit is unfinished', () => {
    expect(files).toHaveLength(3);
    const visits = scenarios.flatMap((scenario) => scenario.visits);
    expect(visits).toHaveLength(5);
    expect(scenarios.filter((scenario) => scenario.visits.length > 1)).toHaveLength(1);
    expect(visits.filter((visit) => visit.findings.some((finding) => finding.unfinished))).toHaveLength(1);
    expect(visits.filter(({ work, handOver }) => work !== undefined && handOver !== undefined)).toHaveLength(1);
  });

  it('tells of every state, and uses every photo once', () => {
    const findings = scenarios.flatMap(({ visits }) => visits.flatMap((visit) => visit.findings));
    const states = new Set(findings.flatMap(({ state }) => state ?? []));
    expect([...states].sort()).toEqual(['confirmed', 'none-found', 'not-examined', 'suspected']);
    const shown = scenarios.flatMap(({ visits }) => visits.flatMap(({ shots = [] }) => shots.map(({ file }) => file)));
    expect(new Set(shown).size).toBe(shown.length);
    const photos = readdirSync(new URL('photos/', folder)).filter((name) => name.endsWith('.jpg'));
    expect([...shown].sort()).toEqual(photos.map((name) => `photos/${name}`).sort());
  });

  it('has a sum on every choice that mends something, in one currency, and none where nothing is done', () => {
    const offered = scenarios.flatMap(({ visits }) =>
      visits.flatMap(({ money, choices = [] }) => choices.map((choice) => ({ money, choice }))),
    );
    expect(offered).not.toHaveLength(0);
    for (const { money, choice } of offered) {
      const mends = Object.values(choice.dispositions).some((is) => is !== 'left');
      expect((choice.costs ?? []).length > 0, choice.name).toBe(mends);
      expect(money, choice.name).toEqual({ currency: 'EUR', taxPercent: '20' });
    }
  });

  it('measures its cracks as long as the scenes say they are, within what it says it can be off by', () => {
    const measured = scenarios
      .flatMap(({ visits }) => visits.flatMap(({ shots = [] }) => shots))
      .flatMap(({ file, scale, marks = [] }) => {
        const truth = JSON.parse(readFileSync(new URL(file.replace('.jpg', '.truth.json'), folder), 'utf8'));
        const [crack] = Object.values(truth.cracks as Record<string, { lengthMm: number }>);
        const path = marks.find(({ shape }) => shape === 'path');
        if (!scale || !crack || !path) return [];
        const points = path.points.map(([x, y]) => ({ x, y }));
        const reference = { ...scale, photo: { width: truth.width, height: truth.height } };
        const { value, expanded } = measureShape(reference, { shape: 'path', points, pointPx: 1, offPlane: false });
        return [{ file, value, expanded: expanded ?? 0, lengthMm: crack.lengthMm }];
      });
    expect(measured.map(({ file }) => file).sort()).toEqual([
      'photos/head-fire-face.jpg',
      'photos/tower-weld-autumn.jpg',
      'photos/tower-weld-spring.jpg',
    ]);
    for (const { file, value, expanded, lengthMm } of measured) {
      expect(Math.abs(value - lengthMm), file).toBeLessThan(expanded);
      expect(expanded / lengthMm, file).toBeLessThan(0.15);
    }
  });

  it('never says OK or safe, and blames nobody', () => {
    const words = files.map((name) => readFileSync(new URL(name, folder), 'utf8'));
    for (const text of words) expect(text).not.toMatch(/\b(OK|okay|safe(?!":)(?!")|abused?|neglect\w*|fault of)\b/);
  });
});

describe.each(scenarios.map((scenario) => [scenario.id, scenario] as const))('%s', (_id, scenario) => {
  const records = toRecords(scenario, (what) => what);
  const { layout } = records.layout;

  it('places every finding, reading and photo on its own layout', () => {
    const places = scenario.visits.flatMap(({ findings, readings = [], shots = [], scope }) => [
      ...findings.flatMap(({ locations }) => locations),
      ...readings.map(({ at }) => at),
      ...shots.flatMap(({ component }) => component ?? []),
      ...scope.map(({ item }) => item),
    ]);
    for (const place of places) expect(speakLocation(place, layout)).not.toBe('');
  });

  it('gives every finding that a photo shows a mark on a photo', () => {
    for (const visit of scenario.visits) {
      const marked = new Set((visit.shots ?? []).flatMap(({ marks = [] }) => marks.map(({ finding }) => finding)));
      for (const { id, shownBy = [] } of visit.findings) if (shownBy.includes('photo')) expect(marked).toContain(id);
    }
  });

  it.each(scenario.visits.flatMap(({ shots = [] }) => shots.map(({ file }) => file)))('%s is there', (file) => {
    expect(existsSync(new URL(file, folder))).toBe(true);
  });

  describe.each(scenario.expect?.visits ?? [])('visit $visit', (wanted) => {
    const at = records.visits.findIndex(({ name }) => name === wanted.visit);
    const record = records.visits[at];
    const source = scenario.visits[at];
    if (record === undefined || source === undefined) throw new Error(`no visit ${wanted.visit}`);
    const nameOf = (id: string) => [...record.findingIdOf].find(([, recordId]) => recordId === id)?.[0];

    it('stands in the order of the rule, each in its tier', () => {
      const { lines } = standingOf({ ...record, layout });
      expect(lines.map((line) => [nameOf(line.findingId), `T${line.tier}`, line.named])).toEqual(
        wanted.order.map(({ id, tier, named }) => [id, tier, named ?? null]),
      );
    });

    it('covers what it says it covers', () => {
      expect(coverage(record)).toEqual(wanted.coverage);
    });

    it.each(wanted.choices)('choice "$choice" leaves what the rule says', (choice) => {
      const chosen = source.choices?.find(({ name }) => name === choice.choice);
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
      expect(left.left.map(({ finding, tier }) => ({ id: nameOf(finding.id), tier: `T${tier}` }))).toEqual(choice.left);
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
