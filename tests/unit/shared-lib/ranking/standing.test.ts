import { describe, expect, it } from 'vitest';
import type { Finding, FindingLink, FindingProof } from '../../../../shared-lib/model/finding.ts';
import { readQuantity } from '../../../../shared-lib/quantities/read-quantity.ts';
import { missingOf } from '../../../../shared-lib/ranking/missing.ts';
import { standingOf } from '../../../../shared-lib/ranking/standing.ts';
import { aFinding, noUse, plainLayout, shownBy } from '../../../support/ranking/a-finding.ts';

function standing(findings: readonly Finding[], proofs: readonly FindingProof[] = findings.map(shownBy), links = []) {
  return standingOf({
    visit: { use: noUse },
    layout: plainLayout,
    findings,
    links,
    proofs,
    scope: [],
    readings: [],
  });
}
const numbers = (findings: readonly Finding[]) => standing(findings).lines.map(({ number }) => number);
const leads = (from: number, to: number): FindingLink =>
  ({ id: `l${from}${to}`, fromId: `f${from}`, toId: `f${to}` }) as FindingLink;
const risky = { safety: { severity: 1, probability: 'D' } } as const;

describe('honesty', () => {
  it('counts a confirmed finding that nothing shows as suspected, and says so', () => {
    const finding = aFinding(1, { safety: { severity: 3, probability: 'B' } });
    const [shown] = standing([finding]).lines;
    const [bare] = standing([finding], []).lines;
    expect(shown).toMatchObject({ tier: 1, state: 'confirmed', missing: [] });
    expect(bare).toMatchObject({ tier: 2, state: 'suspected' });
    expect(bare?.missing).toEqual(['a photo or a reading; until then it counts as suspected']);
    expect(bare?.why).toContain('counts as suspected until it is shown');
  });

  it('asks for a method that can confirm the defect: a tight crack is not confirmed by eye', () => {
    const seen = aFinding(1, { defect: 'crack', methods: ['V'], locations: ['FRM/BOOM'] });
    const [line] = standing([seen]).lines;
    expect(line?.state).toBe('suspected');
    expect(line?.missing.join()).toContain('by penetrant, by magnetic particle or by pressure test');
    expect(standing([{ ...seen, methods: ['V', 'PT'] }]).lines[0]?.state).toBe('confirmed');
  });

  it('takes a reading for a proof as well as a photo', () => {
    const finding = aFinding(1);
    const proof: FindingProof = { id: 'p', findingId: 'f1', shotId: null, readingId: 'r1' };
    expect(standing([finding], [proof]).lines[0]?.state).toBe('confirmed');
    expect(standing([finding], [{ ...proof, readingId: null }]).lines[0]?.state).toBe('suspected');
  });

  it('keeps the tier of a suspected danger to life', () => {
    const finding = aFinding(1, { ...risky, state: 'suspected' });
    expect(standing([finding], []).lines[0]).toMatchObject({ tier: 1, state: 'suspected' });
  });

  it('lists every judgement that nobody has given, and does not call the finding a note', () => {
    const open = aFinding(1, {
      defect: null,
      locations: [],
      safety: null,
      urgency: null,
      runWorse: null,
      damageClass: null,
      words: 'something rattles',
    });
    const [line] = standing([open], []).lines;
    expect(line?.tier).toBe(3);
    expect(line?.title).toBe('Something rattles');
    expect(line?.missing).toEqual([
      'what it is',
      'where it is',
      'a photo or a reading; until then it counts as suspected',
      'whether it can hurt somebody: not judged yet',
      'how soon it matters: not judged yet',
      'whether running makes it worse: not judged yet',
      'what waiting can cost: not judged yet',
    ]);
  });

  it('asks how it was looked for where nothing was found, and no more', () => {
    const missing = (methods: Finding['methods']) =>
      missingOf(aFinding(1, { state: 'none-found', defect: 'crack', methods, safety: null, urgency: null }), []);
    expect(missing([])).toEqual(['how it was looked for']);
    expect(missing(['PT'])).toEqual([]);
  });

  it('asks nothing of an observation', () => {
    expect(missingOf(aFinding(1, { kind: 'observation', defect: null, locations: [] }), [])).toEqual([]);
  });

  it('asks why a part was not examined', () => {
    const finding = aFinding(1, { state: 'not-examined', methods: [] });
    expect(standing([finding]).lines[0]?.missing).toEqual(['why it was not examined']);
  });
});

describe('what stands', () => {
  it('leaves out the bin and what a later conclusion has replaced', () => {
    expect(numbers([aFinding(1), aFinding(2, { binned: true }), aFinding(3, { supersedes: 'f1' })])).toEqual([3]);
  });

  it('brings the earlier conclusion back when its replacement goes into the bin', () => {
    expect(numbers([aFinding(1), aFinding(2, { supersedes: 'f1', binned: true })])).toEqual([1]);
  });

  it('lists observations and what was not found without a rank', () => {
    const { lines, unranked } = standing([
      aFinding(1, { kind: 'observation', defect: null, words: 'dried crust' }),
      aFinding(2, { state: 'none-found', defect: 'crack', locations: ['ENG/BLK/DECK.1'] }),
    ]);
    expect(lines).toEqual([]);
    expect(unranked.map(({ state, title }) => [state, title])).toEqual([
      ['observation', 'Engine: dried crust'],
      ['none-found', 'Block deck: crack not found'],
    ]);
  });

  it('names what it is, where, and how big', () => {
    const length = readQuantity('14 mm', 'mm', 'measured');
    const [line] = standing([
      aFinding(1, { defect: 'crack', locations: ['ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3'], quantities: { length } }),
    ]).lines;
    expect(line?.title).toBe('Exhaust seat, cylinder 3: crack 14\u202fmm');
  });
});

describe('lines moved by hand', () => {
  const three = [aFinding(1, risky), aFinding(2, { urgency: 2 }), aFinding(3, { urgency: 3 })];
  const move = (number: number, beforeFindingId: string | null) =>
    three.map((finding) =>
      finding.number === number ? { ...finding, moved: { beforeFindingId, reason: 'part is on the bench' } } : finding,
    );

  it('stand before the finding they are moved to, and keep their computed place and tier in sight', () => {
    const { lines } = standing(move(3, 'f1'));
    expect(lines.map(({ number, place, computedPlace, tier }) => [number, place, computedPlace, tier])).toEqual([
      [3, 1, 3, 3],
      [1, 2, 1, 1],
      [2, 3, 2, 3],
    ]);
    expect(lines[0]?.movedBecause).toBe('part is on the bench');
    expect(lines[1]?.movedBecause).toBeNull();
  });

  it('go to the end of their tier without a target', () => {
    expect(numbers(move(2, null))).toEqual([1, 3, 2]);
  });

  it('stay where they were computed when the target is gone or is themselves', () => {
    expect(numbers(move(2, 'gone'))).toEqual([1, 2, 3]);
    expect(numbers(move(2, 'f2'))).toEqual([1, 2, 3]);
  });

  it('never lose a line when they are moved before each other', () => {
    const ring = move(2, 'f3').map((finding) =>
      finding.number === 3 ? { ...finding, moved: { beforeFindingId: 'f2', reason: 'ring' } } : finding,
    );
    expect(numbers(ring).sort()).toEqual([1, 2, 3]);
  });
});

describe('why a line stands there', () => {
  const whyOf = (differs: Partial<Finding>, use = noUse) =>
    standingOf({
      visit: { use },
      layout: plainLayout,
      findings: [aFinding(1, differs)],
      links: [],
      proofs: [shownBy(aFinding(1))],
      scope: [],
      readings: [],
    }).lines[0]?.why;

  it.each<[Partial<Finding>, string]>([
    [risky, 'Could kill or disable somebody: unlikely but possible in 250 hours of use.'],
    [{ urgency: 2 }, 'Due within 50 hours.'],
    [{ urgency: 0, runWorse: true }, 'Running makes it worse, due at the next start.'],
    [{ damageClass: 2 }, 'Waiting can cost a third to three quarters of what the machine is worth.'],
    [{}, 'Nothing urgent seen.'],
    [{ urgency: null }, 'Not judged yet.'],
    [{ safety: null }, 'Not judged yet, so it cannot stand as a note.'],
    [
      { state: 'not-examined', locations: ['BRK/LINING.L'], notExaminedBecause: 'wheels on' },
      'Must be examined before release: nobody has looked (wheels on).',
    ],
    [
      { state: 'not-examined', locations: ['BRK'], notExaminedBecause: 'The wheels stayed on. No time was left.' },
      'Must be examined before release: nobody has looked (the wheels stayed on).',
    ],
    [{ defect: 'bypass', methods: ['F'], locations: ['ELEC/INTLK'] }, 'An interlock is defeated.'],
    [
      { defect: 'bypass', state: 'suspected', locations: ['ELEC/INTLK'] },
      'An interlock is defeated; suspected, and so taken for true until proven otherwise.',
    ],
    [{ state: 'suspected', safety: null }, 'Not judged yet, so it cannot stand as a note; suspected.'],
    [
      { state: 'suspected', safety: { severity: 3, probability: 'B' } },
      'Could cost somebody a day of work: several times in 250 hours of use; one step lower because it is only suspected.',
    ],
  ])('%o', (differs, expected) => {
    expect(whyOf(differs)).toBe(expected);
  });

  it('says that a named condition is not followed, and why', () => {
    expect(
      whyOf({
        defect: 'bypass',
        methods: ['F'],
        locations: ['ELEC/INTLK'],
        namedConditionDeclinedBecause: 'parked for good',
      }),
    ).toBe('Nothing urgent seen; an interlock is defeated, yet not followed: parked for good.');
  });

  it('says that nobody has judged whether it can hurt somebody, beside what else decides', () => {
    expect(whyOf({ safety: null, urgency: 2 })).toBe(
      'Due within 50 hours; whether it can hurt somebody is not judged yet.',
    );
  });

  it.each<[Partial<Finding>, Partial<Finding>, FindingLink[], string]>([
    [{ urgency: 1 }, { urgency: 3 }, [], 'Due within 10 hours, sooner than 2.'],
    [
      { urgency: 3, damageClass: 1 },
      { urgency: 3, damageClass: 2 },
      [],
      'Due within 250 hours, dearer than 2 if it is left.',
    ],
    [{ urgency: 3 }, { urgency: 2 }, [leads(1, 2)], 'Due within 250 hours, before 2, which it leads to.'],
    [
      { state: 'suspected', urgency: 3 },
      { urgency: 3 },
      [leads(1, 2)],
      'Due within 250 hours; suspected, and it leads to 2, which is certain.',
    ],
    [{ state: 'suspected', urgency: 3, damageClass: 1 }, { urgency: 5 }, [], 'Due within 250 hours; suspected.'],
    [
      { state: 'suspected', ...risky },
      {},
      [],
      'Could kill or disable somebody: unlikely but possible in 250 hours of use; suspected, and so taken for true until proven otherwise.',
    ],
  ])('%o before %o', (first, second, links, expected) => {
    const findings = [aFinding(1, first), aFinding(2, second)];
    const [line] = standingOf({
      visit: { use: noUse },
      layout: plainLayout,
      findings,
      links,
      proofs: findings.map(shownBy),
      scope: [],
      readings: [],
    }).lines;
    expect(line?.number).toBe(1);
    expect(line?.why).toBe(expected);
  });

  it('tells the use that raises it', () => {
    const differs: Partial<Finding> = { safety: { severity: 3, probability: 'C' }, locations: ['BRK/PEDAL'] };
    expect(whyOf(differs, { ...noUse, slope: true, peopleNear: true })).toBe(
      'Could cost somebody a day of work: likely sometime in 250 hours of use; it works on slopes, near people.',
    );
  });

  it.each([
    ['road', 'on the road'],
    ['slope', 'on slopes'],
    ['peopleNear', 'near people'],
  ] as const)('tells the one use that raises it: %s', (how, words) => {
    const differs: Partial<Finding> = { safety: { severity: 3, probability: 'C' }, locations: ['BRK/PEDAL'] };
    expect(whyOf(differs, { ...noUse, [how]: true })).toMatch(new RegExp(`it works ${words}\\.$`));
  });

  it('shows people no code of the handbook', () => {
    for (const differs of [risky, { urgency: 2 }, { damageClass: 1 }] as Partial<Finding>[]) {
      expect(whyOf(differs)).not.toMatch(/\b[TUDP]\d|\bP\+|\b[1-4][A-F]\b/);
    }
  });
});
