import { describe, expect, it } from 'vitest';
import type { Component } from '../../../../shared-lib/parts/component.ts';
import { componentTemplate } from '../../../../shared-lib/parts/component-template.ts';
import { findComponent } from '../../../../shared-lib/parts/find-component.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { treeOrder } from '../../../../shared-lib/parts/tree-order.ts';

/** Source: the handbook's tree (2.1), copied system by system; a code in brackets there is a part of the one before it. */
const handbookTree: Readonly<Record<string, string>> = {
  ENG: 'HD HG BLK LNR PST RING PIN CLIP JET ROD CRK VT LUB BRE AIR EXH',
  'ENG/HD': 'FIRE CPASS OPASS HB PCH INJB IV IVS IVG BRIDGE EV EVS EVG PORT-I PORT-E CORE ROCK GLOW',
  'ENG/BLK': 'DECK BORE CBORE LWR WJ BOLT MAIN CAM GAL BCORE',
  'ENG/LNR': 'FLG IN OUT SEAL',
  'ENG/PST': 'CRN BOWL TLAND RG SKT PINB',
  'ENG/ROD': 'SMALL BEAM BIG CAP RBOLT RBRG',
  'ENG/CRK': 'MJ CP FIL NOSE FLANGE SEALF SEALR MBRG THRW DAMP',
  'ENG/VT': 'CAMS LOBE TAP PR TIMG',
  'ENG/LUB': 'PUMP RELIEF FILT COOLER SUMP PICKUP OIL-E',
  'ENG/AIR': 'CLEAN HOSE TURBO AFTC INTM',
  'ENG/AIR/TURBO': 'COMP TURB SHAFT BRGH',
  'ENG/EXH': 'EXHM PIPE MUF',
  COOL: 'RAD CAP FAN CLUTCH BELT SHROUD WPUMP TSTAT HOSE RESV OILCLR COOLANT XMSN-CLR',
  'COOL/RAD': 'TOPT CORE BOTT NECK DRAIN',
  FUEL: 'TANK CAPF STRN LIFT FILT INJP HPL INJ LBK RAIL CARB MIXER REG LOCKOFF IGN FUELF',
  'FUEL/INJP': 'GOV STOP TIM',
  ELEC: 'BAT CBL MSW SOL STR GND ALT REG FUSE HARN SW NSW INTLK LAMP HORN RALM',
  'ELEC/BAT': 'ELECTROLYTE',
  INST: 'HRM TEMP OILP AMP VOLT FUELG TACH PRES LEVEL LAMPW BUZ',
  'INST/TEMP': 'SENDER WIRE FACE',
  HYD: 'TANKH STRNH PUMPH RV DCV LCHK LOCKV CBV HOSE TUBE COUP FILH CLRH ACC CYL OIL-H',
  'HYD/CYL': 'BAR GL RODH RSEAL WIPER PIS EYE PINC PORT',
  STEER: 'WHEELS COLM BOX ORB PITMAN DRAG TIEROD BALL KPIN AXLE CYL PRI ART LOCKBAR',
  BRK: 'PEDAL LATCH MCYL LINE DISC DRUM LINING PARK ACCU',
  DRV: 'CLUTCHD GBX TORQ PTO DIFF FINAL HUB WHEEL TRK',
  'DRV/PTO': 'SHIELD',
  'DRV/WHEEL': 'RIM LOCKRING TYRE STUD',
  FRM: 'RAIL XMBR LOADERTWR BOOM ARM BUCKET PIN BUSH BLADE MAST OUTR HITCH 3PL CTWT STEP RAIL-H PLATE DECAL',
  'FRM/MAST': 'CHAIN CARR FORK',
  PROT: 'ROPS FOPS SEAT BELTS GUARD FIRE-EXT ARMSUP',
};

const handbookPaths = Object.entries(handbookTree).flatMap(([above, codes]) =>
  codes.split(' ').map((code) => `${above}/${code}`),
);

function walk(
  components: readonly Component[],
  above: string,
): readonly { readonly path: string; readonly component: Component }[] {
  return components.flatMap((component) => {
    const path = above === '' ? component.code : `${above}/${component.code}`;
    return [{ path, component }, ...walk(component.parts ?? [], path)];
  });
}

const all = walk(componentTemplate, '');

describe('the component tree', () => {
  it.each(handbookPaths)("has the handbook's %s", (path) => {
    expect(findComponent(parseLocation(path).path)?.code).toBe(path.split('/').at(-1));
  });

  it('names each code once among its like', () => {
    const paths = all.map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
  });

  it.each(all.map(({ path, component }) => [path, component] as const))('%s has a plain name', (_, component) => {
    expect(component.name).toMatch(/^[a-z]/);
    expect(component.name).not.toMatch(/[A-Z]{2}/);
  });

  it('gives every component its own place in the order, parents first', () => {
    const orders = all.map(({ path }) => treeOrder(parseLocation(path).path));
    expect(orders).toEqual([...orders.keys()]);
  });

  it('puts what it does not know last', () => {
    expect(treeOrder(parseLocation('ENG/NOTHING').path)).toBeGreaterThan(treeOrder(parseLocation('PROT/ARMSUP').path));
  });
});
