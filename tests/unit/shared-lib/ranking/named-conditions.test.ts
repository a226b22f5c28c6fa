import { describe, expect, it } from 'vitest';
import { defectOf } from '../../../../shared-lib/defects/index.ts';
import type { FindingFact } from '../../../../shared-lib/model/finding.ts';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { namedConditions, proposeNamedCondition } from '../../../../shared-lib/ranking/named-conditions/index.ts';
import { noUse, plainLayout } from '../../../support/ranking/a-finding.ts';

type Use = Partial<typeof noUse>;
type Case = [string, string, FindingFact[]?, Use?, Layout['roles']?];

const propose = ([place, defect, facts = [], use = {}, roles]: Case): string | null => {
  if (defectOf(defect) === null) throw new Error(`no defect ${defect}`);
  const layout: Layout = roles === undefined ? plainLayout : { ...plainLayout, roles };
  return proposeNamedCondition({ defect, facts, locations: [place] }, layout, { ...noUse, ...use })?.id ?? null;
};

/** The list of the handbook's 6.5, clause by clause; common practice, no source. */
const matching: readonly [string, ...Case][] = [
  ['steering-joint', 'STEER/TIEROD.L', 'loose'],
  ['steering-joint', 'STEER/DRAG', 'crack'],
  ['steering-joint', 'STEER/BALL.1', 'missing'],
  ['steering-joint', 'STEER/DRAG', 'play', ['past-limit'], { road: true }],
  ['steering-joint', 'STEER/DRAG', 'play', ['past-limit'], { slope: true }],
  ['service-brake', 'BRK/DISC.L', 'lowout', ['past-limit']],
  ['service-brake', 'BRK/MCYL', 'inop'],
  ['parking-brake', 'BRK/PARK', 'lowout', ['creeps-on-slope-used']],
  ['load-drift', 'HYD/CYL.boom.L', 'drift', ['under-load']],
  ['load-drift', 'HYD/LOCKV.RL', 'drift', ['under-load']],
  ['chain-or-fork', 'FRM/MAST/CHAIN.L', 'wear', ['past-limit']],
  ['chain-or-fork', 'FRM/MAST/FORK.R', 'wear', ['past-limit']],
  ['hook', 'FRM/BOOM', 'crack', [], {}, { 'FRM/BOOM': 'hook' }],
  ['lift-structure', 'FRM/LOADERTWR.R', 'crack', ['growth-shown']],
  ['lift-structure', 'FRM/BOOM', 'crack', ['through-load-path']],
  ['lift-structure', 'FRM/OUTR.FL', 'crack', ['through-load-path']],
  ['load-holding-hose', 'HYD/HOSE.boom.L', 'hosecover', ['to-reinforcement', 'load-holding-line', 'no-lock-valve']],
  ['fluid-jet', 'HYD/HOSE.boom.L', 'spray', [], { peopleNear: true }],
  ['fluid-jet', 'FUEL/HPL.1', 'spray', ['people-reach']],
  ['fuel-leak', 'FUEL/HPL.1', 'sealleak', ['pressurised']],
  ['fuel-leak', 'FUEL/TANK', 'sealleak', ['near-heat']],
  ['fuel-in-sump', 'ENG/LUB/SUMP', 'mixing', ['fuel-in-sump']],
  ['rollover-frame', 'PROT/ROPS', 'missing'],
  ['rollover-frame', 'PROT/ROPS', 'badrepair'],
  ['rollover-frame', 'PROT/ROPS', 'wrongfast'],
  ['no-belt-on-slope', 'PROT/BELTS', 'missing', [], { slope: true }],
  ['defeated-interlock', 'ELEC/INTLK', 'bypass'],
  ['defeated-interlock', 'ELEC/NSW', 'bypass'],
  ['defeated-interlock', 'ELEC/SW.1', 'bypass', [], {}, { 'ELEC/SW.1': 'interlock' }],
  ['wheel-or-rim', 'DRV/WHEEL.FL/RIM', 'crack'],
  ['wheel-or-rim', 'DRV/WHEEL.FL/STUD.1', 'missing'],
  ['engine-will-not-stop', 'FUEL/INJP/STOP', 'inop'],
  ['engine-will-not-stop', 'ELEC/SW.2', 'inop', [], {}, { 'ELEC/SW.2': 'stop-control' }],
  ['unguarded-driveline', 'DRV/PTO/SHIELD', 'noguard', ['people-reach']],
  ['carbon-monoxide', 'ENG/EXH/EXHM', 'crack', ['co-above-limit-indoors']],
  ['battery', 'ELEC/BAT.1', 'crack'],
  ['battery', 'ELEC/ALT', 'lowout', ['over-charged']],
  ['bare-main-cable', 'ELEC/CBL', 'chafe', ['bare-full-current']],
  ['raised-unsupported', 'FRM/BOOM', 'missing', ['raised-unsupported']],
];

/** The same parts with the one thing missing that makes it do-not-operate. */
const notMatching: readonly Case[] = [
  ['STEER/DRAG', 'play', ['past-limit']],
  ['STEER/DRAG', 'play', [], { road: true, slope: true }],
  ['BRK/DISC.L', 'lowout'],
  ['BRK/PARK', 'lowout', ['creeps-on-slope-used', 'other-hold']],
  ['BRK/PARK', 'lowout', [], { slope: true }],
  ['HYD/CYL.boom.L', 'drift'],
  ['FRM/MAST/CHAIN.L', 'wear'],
  ['FRM/LOADERTWR.R', 'crack'],
  ['ENG/HD.1', 'crack', ['growth-shown']],
  ['HYD/HOSE.boom.L', 'hosecover', ['to-reinforcement', 'load-holding-line']],
  ['HYD/HOSE.boom.L', 'hosecover', ['to-reinforcement', 'no-lock-valve']],
  ['HYD/HOSE.boom.L', 'spray'],
  ['FUEL/TANK', 'sealleak'],
  ['COOL/RAD', 'sealleak', ['near-heat']],
  ['PROT/ROPS', 'corr'],
  ['PROT/BELTS', 'missing'],
  ['PROT/BELTS', 'agehard', [], { slope: true }],
  ['ELEC/SW.1', 'bypass', [], {}, { 'ELEC/SW.1': 'shut-down' }],
  ['ELEC/INTLK', 'inop'],
  ['DRV/WHEEL.FL', 'wear'],
  ['DRV/WHEEL.FL/STUD.1', 'crack'],
  ['DRV/PTO/SHIELD', 'noguard'],
  ['COOL/FAN', 'noguard', ['people-reach']],
  ['PROT/ARMSUP', 'missing'],
  ['ELEC/CBL', 'chafe'],
];

/** These hang on a fact, whatever the part and whatever the defect is called. */
const onFactAlone = ['fuel-in-sump', 'carbon-monoxide', 'raised-unsupported'];
/** These hang on a defect or fact that says by itself which part it is. */
const whateverThePart = [...onFactAlone, 'fluid-jet', 'bare-main-cable'];
/** These hang on the part and a fact, whatever the defect is called. */
const whateverTheDefect = [...onFactAlone, 'parking-brake', 'chain-or-fork', 'load-holding-hose'];
const neutralDefect = 'deposit';
const neutralPlace = 'COOL/RAD';

describe('what a do-not-operate condition hangs on', () => {
  const whole = matching.map(([id, place, defect, facts = [], use = {}, roles]) => ({
    id,
    place,
    defect,
    facts,
    use,
    roles,
  }));
  const isNamed = ({ id, place, defect, facts, use, roles }: (typeof whole)[number]) =>
    propose([place, defect, facts, use, roles]) === id;

  it.each(whole.filter(({ facts }) => facts.length > 0))(
    '$id at $place ($defect): on every fact it is told with',
    (context) => {
      for (const fact of context.facts) {
        const without = { ...context, facts: context.facts.filter((each) => each !== fact) };
        expect(isNamed(without), fact).toBe(false);
      }
    },
  );

  it.each(whole)('$id at $place ($defect): on the use it is told with', (context) => {
    if (Object.keys(context.use).length > 0) expect(isNamed({ ...context, use: {} })).toBe(false);
    else expect(isNamed({ ...context, use: { road: true, slope: true, peopleNear: true } })).toBe(true);
  });

  it.each(whole.filter(({ id }) => !whateverTheDefect.includes(id)))(
    '$id at $place ($defect): on the defect',
    (context) => {
      if (context.facts.includes('over-charged')) return expect(isNamed(context)).toBe(true);
      expect(isNamed({ ...context, defect: neutralDefect })).toBe(false);
    },
  );

  it.each(whole.filter(({ id }) => !whateverThePart.includes(id)))(
    '$id at $place ($defect): on the part',
    (context) => {
      if (context.facts.includes('over-charged')) return expect(isNamed(context)).toBe(true);
      expect(isNamed({ ...context, place: neutralPlace })).toBe(false);
    },
  );
});

describe('do-not-operate conditions', () => {
  it.each(matching)('%s: %s %s %o', (id, ...context) => {
    expect(propose(context)).toBe(id);
  });

  it.each(notMatching)('none: %s %s %o', (...context) => {
    expect(propose(context)).toBeNull();
  });

  it('has a case for each of them, and no two of one id', () => {
    expect(new Set(matching.map(([id]) => id))).toEqual(new Set(namedConditions.map(({ id }) => id)));
    expect(new Set(namedConditions.map(({ id }) => id)).size).toBe(namedConditions.length);
  });

  it('is found at any of a finding’s places', () => {
    const finding = { defect: 'bypass', facts: [], locations: ['ELEC/LAMP.1', 'ELEC/INTLK'] };
    expect(proposeNamedCondition(finding, plainLayout, noUse)?.id).toBe('defeated-interlock');
  });

  it('can hang on a fact alone, before anybody has said where', () => {
    const finding = { defect: null, facts: ['fuel-in-sump' as const], locations: [] };
    expect(proposeNamedCondition(finding, plainLayout, noUse)?.id).toBe('fuel-in-sump');
  });
});
