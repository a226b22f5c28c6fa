import { batteryAtRest } from './battery-at-rest/compute.ts';
import { batteryUnderLoad } from './battery-under-load/compute.ts';
import { boilingMargin } from './boiling-margin/compute.ts';
import { bore } from './bore/compute.ts';
import { brakes } from './brakes/compute.ts';
import { cableDrop } from './cable-drop/compute.ts';
import { carbonMonoxide } from './carbon-monoxide/compute.ts';
import { chainAndFork } from './chain-and-fork/compute.ts';
import { charging } from './charging/compute.ts';
import { combustionGas } from './combustion-gas/compute.ts';
import { compression } from './compression/compute.ts';
import { coolantCondition } from './coolant-condition/compute.ts';
import { coolingPressureHold } from './cooling-pressure-hold/compute.ts';
import { crackGrowth } from './crack-growth/compute.ts';
import { cranking } from './cranking/compute.ts';
import { cylinderDrift } from './cylinder-drift/compute.ts';
import { cylinderLeakage } from './cylinder-leakage/compute.ts';
import { flatness } from './flatness/compute.ts';
import { hoursAndTrend } from './hours-and-trend/compute.ts';
import { hydraulicPressure } from './hydraulic-pressure/compute.ts';
import { injectors } from './injectors/compute.ts';
import { journals } from './journals/compute.ts';
import { leakRate } from './leak-rate/compute.ts';
import { linerProtrusion } from './liner-protrusion/compute.ts';
import { oilPressure } from './oil-pressure/compute.ts';
import { pistonClearance } from './piston-clearance/compute.ts';
import { pressureCap } from './pressure-cap/compute.ts';
import { pressureTest } from './pressure-test/compute.ts';
import type { Sheet } from './sheet-kind.ts';
import { sizeAgainstLimit } from './size-against-limit/compute.ts';
import { steeringPlay } from './steering-play/compute.ts';
import { sweptArea } from './swept-area/compute.ts';
import { valves } from './valves/compute.ts';

/** Every sheet, in the order of the bench. */
export const sheets: readonly Sheet[] = [
  batteryAtRest,
  batteryUnderLoad,
  cranking,
  cableDrop,
  charging,
  pressureCap,
  coolingPressureHold,
  boilingMargin,
  combustionGas,
  compression,
  cylinderLeakage,
  bore,
  flatness,
  linerProtrusion,
  pistonClearance,
  valves,
  journals,
  injectors,
  leakRate,
  cylinderDrift,
  steeringPlay,
  brakes,
  hoursAndTrend,
  crackGrowth,
  hydraulicPressure,
  coolantCondition,
  oilPressure,
  chainAndFork,
  pressureTest,
  carbonMonoxide,
  sizeAgainstLimit,
  sweptArea,
];

/** By its id or its name, in any spelling of case and spaces (`steering-free-play`); null for anything else. */
export function sheetOf(name: string): Sheet | null {
  const wanted = plain(name);
  return sheets.find((sheet) => plain(sheet.id) === wanted || plain(sheet.name) === wanted) ?? null;
}

const plain = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[\s,_]+/g, '-');
