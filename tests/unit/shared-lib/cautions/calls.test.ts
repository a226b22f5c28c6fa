import { describe, expect, it } from 'vitest';
import {
  cautionsFor,
  cautionsForFinding,
  cautionsForSheet,
  cautionsForStep,
} from '../../../../shared-lib/cautions/cautions-for.ts';
import { speakBecause } from '../../../../shared-lib/cautions/speak-because.ts';
import type { Finding } from '../../../../shared-lib/model/finding.ts';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { aFinding, plainLayout } from '../../../support/ranking/a-finding.ts';

type Told = readonly { readonly caution: { readonly id: string } }[];
const idsOf = (called: Told) => called.map(({ caution }) => caution.id);

/** Triggers of the handbook's catalogue (chapter 9) that none of its worked cases meets. */
const atTheBench: readonly [string, Partial<Finding>, string][] = [
  ['a leaking injection line', { defect: 'sealleak', locations: ['FUEL/HPL.3'] }, 'CAU-02'],
  ['an accumulator', { defect: 'lowout', locations: ['HYD/ACC'] }, 'CAU-04'],
  ['a cracked battery', { defect: 'crack', locations: ['ELEC/BAT.1'] }, 'CAU-05'],
  ['a leaking exhaust', { defect: 'sealleak', locations: ['ENG/EXH/EXHM'] }, 'CAU-09'],
  ['fluid above a piston', { defect: 'seizure', locations: ['ENG/PST.2'], facts: ['fluid-in-cylinder'] }, 'CAU-14'],
  ['a loose articulation pin', { defect: 'play', locations: ['STEER/ART.U'] }, 'CAU-19'],
  ['a cracked rim', { defect: 'crack', locations: ['DRV/WHEEL.FL/RIM'] }, 'CAU-21'],
  ['a worn lift chain', { defect: 'wear', locations: ['FRM/MAST/CHAIN.L'] }, 'CAU-23'],
  ['a hot turbocharger', { defect: 'sealleak', locations: ['ENG/AIR/TURBO'] }, 'CAU-27'],
  ['a track tensioner', { defect: 'sealleak', locations: ['DRV/TRK.L/TENSIONER'] }, 'CAU-30'],
  ['a sticking stop control', { defect: 'inop', locations: ['FUEL/INJP/STOP'] }, 'CAU-32'],
  ['a cracked fuel tank', { defect: 'crack', locations: ['FUEL/TANK'] }, 'CAU-33'],
  ['charred seals', { defect: 'burnt', locations: ['HYD/CYL.boom.L/RSEAL'], facts: ['charred-seal'] }, 'CAU-34'],
  ['coolant in the oil', { defect: 'mixing', locations: ['ENG/LUB/OIL-E'] }, 'CAU-35'],
  ['what running ruins at once', { urgency: 0, runWorse: true, locations: ['ENG/CRK'] }, 'CAU-35'],
  ['an icy step', { defect: 'missing', locations: ['FRM/STEP.1'] }, 'CAU-36'],
  ['a chafed main cable', { defect: 'chafe', locations: ['ELEC/CBL.pos'] }, 'CAU-38'],
];

describe('on the card of a finding', () => {
  it.each(atTheBench)('%s calls its caution', (_name, differs, id) => {
    expect(idsOf(cautionsForFinding(aFinding(1, differs), plainLayout))).toContain(id);
  });

  it.each([
    ['a leaking exhaust is no fluid jet', { defect: 'sealleak', locations: ['ENG/EXH/EXHM'] }, 'CAU-02'],
    ['a suction hose holds nothing up', { defect: 'sealleak', locations: ['HYD/HOSE.suction'] }, 'CAU-01'],
    ['a steering cylinder holds nothing up', { defect: 'sealleak', locations: ['STEER/CYL.steer'] }, 'CAU-01'],
    ['a worn tank asks for no welding', { defect: 'wear', locations: ['FUEL/TANK'] }, 'CAU-33'],
    ['what running does not make worse', { urgency: 0, runWorse: false, locations: ['ENG/CRK'] }, 'CAU-35'],
    ['what running makes worse, but not at once', { urgency: 1, runWorse: true, locations: ['ENG/CRK'] }, 'CAU-35'],
    ['an interlock that is worn is not defeated', { defect: 'wear', locations: ['ELEC/INTLK'] }, 'CAU-20'],
  ] satisfies [string, Partial<Finding>, string][])('%s', (_name, differs, id) => {
    expect(idsOf(cautionsForFinding(aFinding(1, differs), plainLayout))).not.toContain(id);
  });

  it('what was looked for and not found calls nothing but the caution of its method', () => {
    const looked: Partial<Finding> = { locations: ['HYD/CYL.boom.L'], defect: 'crack', state: 'none-found' };
    expect(idsOf(cautionsForFinding(aFinding(1, { ...looked, methods: ['V'] }), plainLayout))).toEqual([]);
    expect(idsOf(cautionsForFinding(aFinding(1, { ...looked, methods: ['PT'] }), plainLayout))).toEqual(['CAU-26']);
  });

  it('an observation and an empty card call nothing', () => {
    const told = aFinding(1, { kind: 'observation', defect: null, locations: ['HYD/HOSE.boom.L'] });
    expect(cautionsForFinding(told, plainLayout)).toEqual([]);
    const empty = aFinding(1, { defect: null, locations: [], urgency: null, runWorse: null });
    expect(cautionsForFinding(empty, plainLayout)).toEqual([]);
  });
});

describe('before a sheet or a step', () => {
  it('the drift of a cylinder is taken with the crush and the jet in mind', () => {
    expect(idsOf(cautionsForSheet('MS-20', 'HYD/CYL.boom.L', plainLayout))).toEqual(['CAU-01']);
    expect(idsOf(cautionsForSheet('MS-20', 'HYD/CYL.jack.RL', plainLayout))).toEqual(['CAU-01', 'CAU-22']);
    expect(idsOf(cautionsForSheet('MS-25', 'HYD/RV.1', plainLayout))).toEqual(['CAU-02', 'CAU-37']);
  });

  it('a forklift sheet speaks of forks only at forks and chains', () => {
    expect(idsOf(cautionsForSheet('MS-28', 'FRM/MAST/FORK.L', plainLayout))).toEqual(['CAU-23']);
    expect(idsOf(cautionsForSheet('MS-28', 'DRV/WHEEL.FL/TYRE', plainLayout))).toEqual([]);
  });

  it('a failing crank sheet only warns of a locked cylinder once it has failed', () => {
    expect(idsOf(cautionsForSheet('MS-03', 'ELEC/STR', plainLayout))).toEqual(['CAU-38']);
  });

  it('a hose is opened on a machine with an accumulator', () => {
    const withAccumulator: Layout = { ...plainLayout, has: ['HYD/ACC'] };
    const work = { step: 'open-hydraulic', at: 'HYD/HOSE.boom.L' } as const;
    expect(idsOf(cautionsForStep(work, plainLayout))).toEqual(['CAU-01', 'CAU-03']);
    expect(idsOf(cautionsForStep(work, withAccumulator))).toEqual(['CAU-01', 'CAU-04', 'CAU-03']);
  });

  it.each([
    ['run-indoors', ['CAU-09', 'CAU-27', 'CAU-37']],
    ['weld', ['CAU-33']],
    ['spring', ['CAU-30']],
    ['grease-tensioner', ['CAU-02', 'CAU-30']],
    ['climb', ['CAU-36']],
    ['battery', ['CAU-05', 'CAU-38']],
    ['open-fuel', ['CAU-07']],
  ] as const)('%s', (step, ids) => {
    expect(idsOf(cautionsForStep({ step, at: null }, plainLayout))).toEqual(ids);
  });
});

describe('what the machine is or has', () => {
  const nothing = { findings: [], readings: [] };
  it.each([
    ['an articulated machine', { articulated: true }, ['CAU-19']],
    ['an accumulator', { has: ['BRK/ACCU'] }, ['CAU-04']],
    ['a petrol engine', { engine: { ...plainLayout.engine, fuel: 'petrol' } }, ['CAU-09']],
    ['none of these', {}, []],
  ] satisfies [string, Partial<Layout>, string[]][])('%s', (_name, differs, ids) => {
    const layout = { ...plainLayout, ...differs };
    for (const where of ['bench', 'report'] as const)
      expect(idsOf(cautionsFor({ layout, ...nothing }, where))).toEqual(ids);
  });
});

it('a dead gauge that the chosen option mends is no longer spoken of', () => {
  const gauge = aFinding(4, { defect: 'inop', locations: ['INST/OILP'] });
  const record = { layout: plainLayout, findings: [gauge], readings: [] };
  expect(idsOf(cautionsFor({ ...record, chosen: { steps: [], fixes: new Set() } }, 'report'))).toEqual(['CAU-31']);
  expect(idsOf(cautionsFor({ ...record, chosen: { steps: [], fixes: new Set([gauge.id]) } }, 'report'))).toEqual([]);
});

it('a finding that two clauses meet is named once, in words', () => {
  const hose = aFinding(7, { defect: 'spray', locations: ['HYD/HOSE.boom.L'] });
  const called = cautionsForFinding(hose, plainLayout).find(({ caution }) => caution.id === 'CAU-02');
  expect(called?.because.map((call) => speakBecause(call, [hose], plainLayout))).toEqual([
    'finding 7, left boom hose: jet',
  ]);
});
