import { describe, expect, it } from 'vitest';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { classesOfPlace } from '../../../../shared-lib/parts/classes-of-place.ts';
import { isCriticalSystem } from '../../../../shared-lib/parts/critical-system.ts';
import { layoutOf } from './scenario-places.ts';

const backhoe = layoutOf('s6');
const crane = layoutOf('s4');
const gasTruck: Layout = { ...backhoe, engine: { ...backhoe.engine, fuel: 'LPG' } };
const withRoles: Layout = {
  ...backhoe,
  roles: { 'FRM/PIN.3': 'lift-structure', 'FRM/HITCH': 'hook', 'COOL/SHROUD': 'guard', 'ELEC/SW.2': 'stop-control' },
};

// Source: the handbook's ranking rule (12.1): steering; brakes; load-holding (cylinders, lock valves, chains, forks, hooks,
// outriggers, lift structure, stability indicators); protection (rollover frame, belts, guards, interlocks, shut-downs,
// stop control); wheels and rims; fuel under pressure. The worked cases pin the first five.
describe('a critical system', () => {
  it.each([
    ['INST/LEVEL', crane],
    ['ELEC/SW.1', layoutOf('s5')],
    ['ELEC/INTLK', layoutOf('s1')],
    ['BRK/LATCH', layoutOf('s0')],
    ['BRK/LINING.L', layoutOf('s7')],
    ['STEER/DRAG', backhoe],
    ['STEER', backhoe],
    ['HYD/CYL.boom.L', backhoe],
    ['HYD/CYL.boom.L/BAR@z=300-480', backhoe],
    ['HYD/CYL.steer', backhoe],
    ['HYD/HOSE.steer.L', backhoe],
    ['HYD/HOSE.brake', backhoe],
    ['HYD/LOCKV.RL', crane],
    ['HYD/CBV.boom', backhoe],
    ['FRM/MAST/CHAIN.L', backhoe],
    ['FRM/MAST/FORK.R', backhoe],
    ['FRM/OUTR.RL', crane],
    ['FRM/LOADERTWR.R@near=PIN.2:30', backhoe],
    ['FRM/BOOM', backhoe],
    ['PROT/ROPS/BOLT.3', backhoe],
    ['PROT/BELTS', backhoe],
    ['PROT/GUARD.1', backhoe],
    ['PROT/ARMSUP', backhoe],
    ['PROT', backhoe],
    ['DRV/PTO/SHIELD', backhoe],
    ['ELEC/NSW', backhoe],
    ['FUEL/INJP/STOP', backhoe],
    ['DRV/WHEEL.FL/RIM', backhoe],
    ['DRV/WHEEL.FL/STUD.3', backhoe],
    ['FUEL/HPL.3', backhoe],
    ['FUEL/INJ.3', backhoe],
    ['FUEL/TANK', gasTruck],
    ['FRM/PIN.3', withRoles],
    ['FRM/HITCH', withRoles],
    ['COOL/SHROUD', withRoles],
    ['ELEC/SW.2', withRoles],
  ])('%s is one', (place, layout) => {
    expect(isCriticalSystem(place, layout)).toBe(true);
  });

  it.each([
    ['FUEL/TANK', layoutOf('s0')],
    ['FUEL/LBK', backhoe],
    ['FUEL', backhoe],
    ['ELEC/SW.1', backhoe],
    ['ELEC/GND.1', backhoe],
    ['INST/TEMP', backhoe],
    ['HYD/HOSE.boom.L', backhoe],
    ['HYD/TANKH', backhoe],
    ['HYD/RV.1', backhoe],
    ['ENG/LNR.4', backhoe],
    ['ENG/HD.1/EVS.3.1', backhoe],
    ['COOL/COOLANT', backhoe],
    ['COOL/SHROUD', backhoe],
    ['FRM/PLATE', crane],
    ['FRM/PIN.3', backhoe],
    ['FRM/PIN.4', withRoles],
    ['DRV/GBX', backhoe],
    ['DRV', backhoe],
    ['PROT/SEAT', backhoe],
    ['PROT/FIRE-EXT', backhoe],
  ])('%s is none', (place, layout) => {
    expect(isCriticalSystem(place, layout)).toBe(false);
  });
});

describe('what a place is', () => {
  it.each([
    ['DRV/WHEEL.FL/LOCKRING', ['wheel', 'rim'], ['driveline']],
    ['HYD/CYL.steer.L/RODH', ['steering', 'hydraulic-cylinder', 'hydraulic'], ['brakes']],
    ['FUEL/TANK', ['fuel'], ['gas-fuel', 'fuel-under-pressure']],
    ['ENG/AIR/TURBO/TURB', ['turbocharger', 'hot-exhaust', 'engine'], ['head']],
    ['STEER/ART.U', ['steering', 'articulation'], []],
  ] as const)('%s', (place, has, hasNot) => {
    const classes = classesOfPlace(place, backhoe);
    for (const word of has) expect(classes).toContain(word);
    for (const word of hasNot) expect(classes).not.toContain(word);
  });
});
