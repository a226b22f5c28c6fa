import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Probability, Severity } from '../../../../shared-lib/model/finding.ts';
import { rank } from '../../../../shared-lib/ranking/rank.ts';
import type { Cause, Rankable } from '../../../../shared-lib/ranking/rankable.ts';
import { residual } from '../../../../shared-lib/ranking/residual.ts';
import { aRankable, noUse } from '../../../support/ranking/a-finding.ts';

const comparePlaces = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
const ranked = (findings: readonly Rankable[], causes: readonly Cause[] = [], use = noUse) =>
  rank({ findings, causes, use, comparePlaces });
const tierOf = (finding: Rankable, use = noUse) => ranked([finding], [], use)[0]?.tier;
const order = (findings: readonly Rankable[], causes: readonly Cause[] = []) =>
  ranked(findings, causes).map(({ finding }) => finding.number);

const rankable = fc.record({
  state: fc.constantFrom('confirmed', 'suspected', 'not-examined'),
  safety: fc.oneof(
    fc.constantFrom(null, 'none'),
    fc.record({
      severity: fc.constantFrom(1, 2, 3, 4),
      probability: fc.constantFrom('A', 'B', 'C', 'D', 'E', 'F'),
    }),
  ),
  urgency: fc.constantFrom(null, 0, 1, 2, 3, 4, 5),
  runWorse: fc.constantFrom(null, true, false),
  damageClass: fc.constantFrom(null, 1, 2, 3, 4),
  place: fc.constantFrom(null, 'BRK', 'COOL', 'ENG'),
  criticalSystem: fc.boolean(),
  named: fc.constantFrom(null, null, 'hook'),
  namedDeclinedBecause: fc.constantFrom(null, 'museum piece'),
  foundOn: fc.constantFrom(null, '2026-01-01', '2026-02-01'),
  loopStart: fc.boolean(),
}) as fc.Arbitrary<Partial<Rankable>>;

const visit = fc
  .tuple(
    fc.array(rankable, { maxLength: 9 }),
    fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { maxLength: 14 }),
    fc.record({ road: fc.boolean(), slope: fc.boolean(), peopleNear: fc.boolean(), exposureHours: fc.constant(250) }),
  )
  .map(([list, pairs, use]) => ({
    findings: list.map((differs, index) => aRankable(index + 1, differs)),
    causes: pairs.map(([from, to]) => ({ fromId: `f${from + 1}`, toId: `f${to + 1}` })),
    use,
  }));

describe('the tier of one finding', () => {
  it('is do not operate for a high level', () => {
    expect(tierOf(aRankable(1, { safety: { severity: 1, probability: 'C' } }))).toBe(0);
  });

  it('is fix before work for a serious level', () => {
    expect(tierOf(aRankable(1, { safety: { severity: 1, probability: 'D' } }))).toBe(1);
  });

  it.each(['road', 'slope', 'peopleNear'] as const)(
    'raises a medium level on a critical system used with %s',
    (how) => {
      const finding = aRankable(1, { safety: { severity: 3, probability: 'C' }, criticalSystem: true });
      expect(tierOf(finding)).toBe(3);
      expect(tierOf(finding, { ...noUse, [how]: true })).toBe(1);
    },
  );

  it('does not raise a medium level on any other part', () => {
    const finding = aRankable(1, { safety: { severity: 3, probability: 'C' } });
    expect(tierOf(finding, { ...noUse, road: true })).toBe(3);
  });

  it('drops a suspected hazard of severity 3 by one, and keeps severity 1 and 2', () => {
    const at = (severity: Severity) =>
      tierOf(aRankable(1, { state: 'suspected', safety: { severity, probability: 'B' } }));
    expect([at(1), at(2), at(3)]).toEqual([0, 0, 2]);
  });

  it.each([
    [{ urgency: 1, runWorse: true }, 2],
    [{ urgency: 2, runWorse: true }, 3],
    [{ urgency: 1 }, 3],
    [{ urgency: 4 }, 4],
    [{ urgency: 5, damageClass: 2 }, 3],
    [{ urgency: 5, damageClass: 3 }, 4],
    [{ state: 'suspected', urgency: 1, runWorse: true }, 3],
    [{ state: 'suspected', urgency: 1, runWorse: true, damageClass: 1 }, 3],
    [{ state: 'suspected', urgency: 3 }, 4],
    [{ state: 'suspected', urgency: 3, damageClass: 1 }, 3],
    [{ state: 'not-examined', urgency: 0, runWorse: true, damageClass: 1 }, 3],
  ] as const)('%o stands in tier %i', (differs, tier) => {
    expect(tierOf(aRankable(1, differs))).toBe(tier);
  });

  it('never puts what nobody has examined into do not operate', () => {
    const finding = aRankable(1, { state: 'not-examined', safety: { severity: 1, probability: 'A' } });
    expect(tierOf(finding)).toBe(1);
  });

  it('puts an unexamined critical part at the head of fix before work', () => {
    const [first] = ranked([
      aRankable(1, { safety: { severity: 1, probability: 'D' }, urgency: 0 }),
      aRankable(2, { state: 'not-examined', criticalSystem: true }),
    ]);
    expect(first).toMatchObject({ tier: 1, headOfTier: true, finding: { number: 2 } });
  });

  it('does not let a finding stand as a note while a judgement is missing', () => {
    for (const key of ['safety', 'urgency', 'damageClass', 'runWorse'] as const) {
      const item = ranked([aRankable(1, { [key]: null })])[0];
      expect(item).toMatchObject({ tier: 3 });
    }
    expect(tierOf(aRankable(1))).toBe(4);
  });

  it('follows a named condition, unless the mechanic says why not', () => {
    expect(tierOf(aRankable(1, { named: 'hook' }))).toBe(0);
    expect(tierOf(aRankable(1, { named: 'hook', state: 'suspected' }))).toBe(0);
    expect(tierOf(aRankable(1, { named: 'hook', namedDeclinedBecause: 'no hook work' }))).toBe(4);
  });
});

describe('the order inside a tier', () => {
  it('puts a cause before its direct consequence and lets it borrow the urgency', () => {
    const findings = [aRankable(1, { urgency: 1 }), aRankable(2, { urgency: 3 }), aRankable(3, { urgency: 2 })];
    expect(order(findings)).toEqual([1, 3, 2]);
    expect(order(findings, [{ fromId: 'f2', toId: 'f1' }])).toEqual([2, 1, 3]);
  });

  it('does not reach over a finding of another tier', () => {
    const findings = [
      aRankable(1, { urgency: 1, runWorse: true }),
      aRankable(2, { urgency: 3 }),
      aRankable(3, { urgency: 2 }),
    ];
    expect(order(findings, [{ fromId: 'f2', toId: 'f1' }])).toEqual([1, 3, 2]);
  });

  it('begins a loop where the mechanic says, before any date', () => {
    const loop = [
      { fromId: 'f1', toId: 'f2' },
      { fromId: 'f2', toId: 'f3' },
      { fromId: 'f3', toId: 'f1' },
    ];
    const findings = [1, 2, 3].map((number) =>
      aRankable(number, { urgency: 3, foundOn: `2026-0${number}-01`, loopStart: number === 3 }),
    );
    expect(order(findings, loop)).toEqual([3, 1, 2]);
  });

  it('breaks a loop inside the loop, not at an earlier consequence that hangs below it', () => {
    const findings = [
      aRankable(1, { urgency: 3, foundOn: '2026-02-01' }),
      aRankable(2, { urgency: 3, foundOn: '2026-03-01' }),
      aRankable(3, { urgency: 3, foundOn: '2026-01-01' }),
    ];
    const causes = [
      { fromId: 'f1', toId: 'f2' },
      { fromId: 'f2', toId: 'f1' },
      { fromId: 'f2', toId: 'f3' },
    ];
    expect(order(findings, causes)).toEqual([1, 2, 3]);
  });

  it('keeps a cause that lies outside a loop before the whole loop', () => {
    const findings = [
      aRankable(1, { urgency: 3, foundOn: '2026-01-01' }),
      aRankable(2, { urgency: 3, foundOn: '2026-02-01' }),
      aRankable(3, { urgency: 3, foundOn: '2026-03-01' }),
    ];
    const causes = [
      { fromId: 'f1', toId: 'f2' },
      { fromId: 'f2', toId: 'f1' },
      { fromId: 'f3', toId: 'f1' },
    ];
    expect(order(findings, causes)).toEqual([3, 1, 2]);
  });

  it('breaks a loop inside a loop again at its own beginning', () => {
    const findings = [1, 2, 3].map((number) => aRankable(number, { urgency: 3, foundOn: `2026-0${4 - number}-01` }));
    const causes = [
      { fromId: 'f3', toId: 'f1' },
      { fromId: 'f1', toId: 'f2' },
      { fromId: 'f2', toId: 'f1' },
      { fromId: 'f2', toId: 'f3' },
    ];
    expect(order(findings, causes)).toEqual([3, 2, 1]);
  });

  it('lets a finding without a place come after those that have one', () => {
    expect(order([aRankable(1, { place: null }), aRankable(2)])).toEqual([2, 1]);
  });
});

describe('what decides a tier', () => {
  const ground = (differs: Partial<Rankable>, use = noUse) => ranked([aRankable(1, differs)], [], use)[0]?.ground;

  it.each([
    [{ safety: { severity: 1, probability: 'D' }, urgency: 0, runWorse: true }, 'safety'],
    // Medium and 'within 250 hours' both say tier 3: what can hurt somebody is the reason given.
    [{ safety: { severity: 3, probability: 'C' }, urgency: 3 }, 'safety'],
    [{ safety: { severity: 3, probability: 'C' }, urgency: 1, runWorse: true }, 'running-makes-it-worse'],
    [{ urgency: 3 }, 'time-or-cost'],
    [{ damageClass: 2 }, 'time-or-cost'],
    [{ damageClass: 3 }, 'nothing-more'],
    [{ damageClass: null }, 'not-judged'],
    [{ runWorse: null }, 'not-judged'],
    [{}, 'nothing-more'],
    [{ named: 'hook' }, 'named'],
    [{ state: 'not-examined', criticalSystem: true }, 'must-be-examined'],
  ] as const)('%o: %s', (differs, wanted) => {
    expect(ground(differs)).toBe(wanted);
  });

  it('is the use, where only the use raises it', () => {
    const brake = { safety: { severity: 3, probability: 'C' }, criticalSystem: true } as const;
    expect(ground(brake, { ...noUse, road: true })).toBe('critical-in-use');
    expect(ground(brake)).toBe('safety');
  });

  it('only what must be examined stands at the head of its tier, not what is named or not judged', () => {
    const high = aRankable(1, { safety: { severity: 1, probability: 'A' } });
    const named = aRankable(2, { named: 'hook' });
    expect(order([named, high])).toEqual([1, 2]);
    const medium = aRankable(3, { safety: { severity: 3, probability: 'C' } });
    const unjudged = aRankable(4, { damageClass: null });
    expect(order([unjudged, medium])).toEqual([3, 4]);
  });
});

describe('what puts a finding before the next', () => {
  const risk = (severity: Severity, probability: Probability) => ({ safety: { severity, probability } });
  it.each([
    ['graver', risk(1, 'D'), risk(2, 'C')],
    ['graver', risk(1, 'A'), risk(1, 'B')],
    ['sooner', { urgency: 1 }, { urgency: 3 }],
    ['surer', { urgency: 3, damageClass: 1 }, { urgency: 3, damageClass: 1, state: 'suspected' }],
    ['dearer', { urgency: 3, damageClass: 1 }, { urgency: 3, damageClass: 2 }],
    ['dearer', { urgency: 3, damageClass: 3 }, { urgency: 3, damageClass: null }],
    ['dearer', { urgency: 3, damageClass: null }, null],
    [null, { urgency: 3, place: 'A' }, { urgency: 3, place: 'B' }],
  ] as const)('%s: %o before %o', (because, first, second) => {
    if (second === null) return expect(ranked([aRankable(1, first)])[0]?.before).toBeNull();
    // The lower number alone would put the second one first.
    const lines = ranked([aRankable(2, first), aRankable(1, { ...second })]);
    expect(lines.map(({ finding }) => finding.number)).toEqual([2, 1]);
    expect(lines[0]?.before).toEqual(because === null ? null : { id: 'f1', because });
    expect(lines[1]?.before).toBeNull();
  });

  it('is that it leads to it, before anything else, and borrows the most urgent consequence', () => {
    const lines = ranked(
      [aRankable(1, { urgency: 3 }), aRankable(2, { urgency: 2 }), aRankable(3, { urgency: 1 })],
      [
        { fromId: 'f1', toId: 'f2' },
        { fromId: 'f1', toId: 'f3' },
      ],
    );
    expect(lines.map(({ finding, before, urgencyFrom }) => [finding.number, before?.because, urgencyFrom])).toEqual([
      [1, 'leads to it', 'f3'],
      [3, 'sooner', null],
      [2, undefined, null],
    ]);
  });

  it('is nothing said where only the head of the tier decides', () => {
    const lines = ranked([
      aRankable(1, { safety: { severity: 1, probability: 'D' } }),
      aRankable(2, { state: 'not-examined', criticalSystem: true }),
    ]);
    expect(lines.map(({ finding, before }) => [finding.number, before])).toEqual([
      [2, null],
      [1, null],
    ]);
  });
});

describe('properties of the order', () => {
  it('is the same whatever order the findings and links are given in', () => {
    fc.assert(
      fc.property(visit, fc.infiniteStream(fc.nat(1000)), ({ findings, causes, use }, stream) => {
        const keys = new Map<unknown, number>();
        const keyOf = (item: unknown) => {
          if (!keys.has(item)) keys.set(item, stream.next().value ?? 0);
          return keys.get(item) ?? 0;
        };
        const shuffled = <T>(list: readonly T[]) => [...list].sort((a, b) => keyOf(a) - keyOf(b));
        const ids = (a: readonly Rankable[], b: readonly Cause[]) =>
          ranked(a, b, use).map(({ finding, urgencyFrom, before }) => [finding.id, urgencyFrom, before]);
        expect(ids(shuffled(findings), shuffled(causes))).toEqual(ids(findings, causes));
      }),
    );
  });

  it('holds every finding exactly once, in a whole tier from 0 to 4, tiers in order', () => {
    fc.assert(
      fc.property(visit, ({ findings, causes, use }) => {
        const lines = ranked(findings, causes, use);
        expect(lines.map(({ finding }) => finding.id).sort()).toEqual(findings.map(({ id }) => id).sort());
        const tiers = lines.map(({ tier }) => tier);
        expect(tiers.every((tier) => [0, 1, 2, 3, 4].includes(tier))).toBe(true);
        expect([...tiers].sort((a, b) => a - b)).toEqual(tiers);
      }),
    );
  });

  it('never moves a finding to a milder tier when its severity gets worse', () => {
    fc.assert(
      fc.property(visit, fc.constantFrom('A', 'B', 'C', 'D', 'E'), ({ findings, causes, use }, probability) => {
        const [first, ...rest] = findings;
        if (first === undefined) return;
        const tiers = ([4, 3, 2, 1] as const).map((severity) => {
          const worse = { ...first, safety: { severity, probability } } as Rankable;
          return ranked([worse, ...rest], causes, use).find(({ finding }) => finding.id === first.id)?.tier ?? 9;
        });
        expect([...tiers].sort((a, b) => b - a)).toEqual(tiers);
      }),
    );
  });

  it('never stands an unjudged or a doubted finding below a note', () => {
    fc.assert(
      fc.property(visit, ({ findings, causes, use }) => {
        for (const { finding, tier } of ranked(findings, causes, use)) {
          const unjudged = [finding.safety, finding.urgency, finding.damageClass, finding.runWorse].includes(null);
          if (unjudged) expect(tier).toBeLessThanOrEqual(3);
        }
      }),
    );
  });

  it('leaves nothing worse after a choice than there was before, unless it is judged anew', () => {
    const kinds = fc.constantFrom('fixed', 'partly', 'left', 'made-safe', 'unknown');
    fc.assert(
      fc.property(visit, fc.array(kinds, { minLength: 9, maxLength: 9 }), ({ findings, causes, use }, is) => {
        const dispositions = Object.fromEntries(findings.map(({ id }, index) => [id, { is: is[index] ?? 'left' }]));
        const before = new Map(ranked(findings, causes, use).map(({ finding, tier }) => [finding.id, tier]));
        const after = residual({ findings, causes, use, comparePlaces }, dispositions);
        expect(after.left.map(({ finding }) => finding.id).sort()).toEqual(
          findings
            .filter(({ id }) => dispositions[id]?.is !== 'fixed')
            .map(({ id }) => id)
            .sort(),
        );
        for (const { finding, tier } of after.left) expect(tier).toBe(before.get(finding.id));
        for (const { rootsLeft } of after.willReturn) {
          expect(rootsLeft.length).toBeGreaterThan(0);
          for (const root of rootsLeft) expect(dispositions[root]?.is).not.toBe('fixed');
        }
      }),
    );
  });
});

describe('what a choice leaves', () => {
  const findings = [
    aRankable(1, { urgency: 1 }),
    aRankable(2, { urgency: 2 }),
    aRankable(3, { urgency: 3, state: 'suspected' }),
  ];
  const causes = [
    { fromId: 'f3', toId: 'f2' },
    { fromId: 'f2', toId: 'f1' },
  ];
  const input = { findings, causes, use: noUse, comparePlaces };

  it('says what returns, reaching over causes that are mended', () => {
    const left = residual(input, { f1: { is: 'fixed' }, f2: { is: 'fixed' }, f3: { is: 'left' } });
    expect(left.willReturn).toEqual([
      { findingId: 'f2', rootsLeft: ['f3'] },
      { findingId: 'f1', rootsLeft: ['f3'] },
    ]);
  });

  it('names only the topmost cause that stays', () => {
    const left = residual(input, { f1: { is: 'fixed' } });
    expect(left.willReturn).toEqual([{ findingId: 'f1', rootsLeft: ['f3'] }]);
  });

  it('still knows a suspected root of a confirmed finding when that one is mended', () => {
    const left = residual(input, { f1: { is: 'fixed' }, f2: { is: 'fixed' } });
    expect(left.left).toMatchObject([{ tier: 3, finding: { number: 3 } }]);
  });

  it('breaks a loop of causes at its start', () => {
    const loop = {
      ...input,
      findings: [aRankable(1), aRankable(2, { loopStart: true }), aRankable(3)],
      causes: [
        { fromId: 'f2', toId: 'f3' },
        { fromId: 'f3', toId: 'f2' },
        { fromId: 'f3', toId: 'f1' },
      ],
    };
    expect(residual(loop, { f1: { is: 'fixed' } }).willReturn).toEqual([{ findingId: 'f1', rootsLeft: ['f2'] }]);
  });

  it('ranks what is judged anew by its new judgement', () => {
    const danger = [aRankable(1, { safety: { severity: 1, probability: 'C' } })];
    const left = residual(
      { ...input, findings: danger, causes: [] },
      { f1: { is: 'partly', after: { safety: { severity: 1, probability: 'E' } } } },
    );
    expect(left).toMatchObject({ highestLevelLeft: 'Medium', doNotOperateLeft: [] });
    expect(residual({ ...input, findings: danger, causes: [] }, { f1: { is: 'made-safe' } })).toMatchObject({
      highestLevelLeft: 'High',
      doNotOperateLeft: ['f1'],
    });
  });

  it('says none when nothing is left', () => {
    const all = Object.fromEntries(findings.map(({ id }) => [id, { is: 'fixed' as const }]));
    expect(residual(input, all)).toEqual({ left: [], highestLevelLeft: 'none', doNotOperateLeft: [], willReturn: [] });
  });
});
