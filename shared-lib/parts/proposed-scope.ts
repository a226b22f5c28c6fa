import type { Layout } from '../model/layout.ts';
import { headCount } from './engine-counts.ts';
import { componentsAlong } from './find-component.ts';
import { isBelow } from './is-below.ts';
import { isOffered } from './layout-needs.ts';
import { parseLocation } from './parse-location.ts';

const engineItems = ['HG', 'BLK', 'LNR', 'PST', 'ROD', 'CRK', 'VT', 'LUB', 'AIR', 'EXH'].map((code) => `ENG/${code}`);
const coolingItems = ['RAD', 'CAP', 'FAN', 'WPUMP', 'HOSE', 'COOLANT'].map((code) => `COOL/${code}`);
const fuelItems = ['TANK', 'FILT', 'INJP', 'HPL', 'INJ', 'CARB', 'REG'].map((code) => `FUEL/${code}`);
const electricalItems = ['BAT', 'CBL', 'STR', 'GND', 'ALT', 'INTLK', 'LAMP'].map((code) => `ELEC/${code}`);
const hydraulicItems = ['TANKH', 'PUMPH', 'DCV', 'HOSE'].map((code) => `HYD/${code}`);
const axleSteering = ['WHEELS', 'DRAG', 'TIEROD', 'KPIN'].map((code) => `STEER/${code}`);
const articulatedSteering = ['WHEELS', 'CYL', 'ART'].map((code) => `STEER/${code}`);
const runningItems = [
  'BRK/PEDAL',
  'BRK/LINING',
  'BRK/PARK',
  'DRV/GBX',
  'DRV/FINAL',
  'DRV/WHEEL',
  'FRM/RAIL',
  'PROT/ROPS',
  'PROT/BELTS',
  'PROT/GUARD',
];

/** The part of the frame that a hydraulic function moves. */
const structureOfFunction: ReadonlyMap<string, string> = new Map([
  ['boom', 'FRM/BOOM'],
  ['arm', 'FRM/ARM'],
  ['bucket', 'FRM/BUCKET'],
  ['blade', 'FRM/BLADE'],
  ['mast', 'FRM/MAST'],
  ['lift', 'FRM/MAST'],
  ['jack', 'FRM/OUTR'],
]);

/** Nothing is promised about parts whose make is not known yet. */
function asFarAsKnown(layout: Layout): Layout {
  return layout.engine.liner === 'unknown' ? { ...layout, engine: { ...layout.engine, liner: 'parent' } } : layout;
}

function hydraulicsOf(layout: Layout): readonly string[] {
  if (layout.hydraulics.length === 0) return [];
  return [...hydraulicItems, ...layout.hydraulics.map((word) => `HYD/CYL.${word}`)];
}

function structuresOf(layout: Layout): readonly string[] {
  return layout.hydraulics.flatMap((word) => structureOfFunction.get(word) ?? []);
}

function candidates(layout: Layout): readonly string[] {
  return [
    ...Array.from({ length: headCount(layout) }, (_, index) => `ENG/HD.${index + 1}`),
    ...engineItems,
    ...(layout.engine.cooling === 'liquid' ? coolingItems : []),
    ...fuelItems,
    ...electricalItems,
    'INST',
    ...hydraulicsOf(layout),
    ...(layout.articulated === true ? articulatedSteering : axleSteering),
    ...runningItems,
    ...structuresOf(layout),
  ];
}

/**
 * What an inspection of this machine would look at, assembly by assembly: proposed at intake and edited there.
 *
 * @returns  paths, system by system; then the optional parts the machine has and no item covers. An air-cooled engine has
 *   no cooling items, a stationary one no running gear
 * Source: common practice, no source; the handbook's example of a coverage line has 38 items (4.1).
 */
export function proposedScope(layout: Layout): string[] {
  const known = asFarAsKnown(layout);
  const items = candidates(known).filter((path) =>
    componentsAlong(parseLocation(path).path).every((component) => isOffered(component, known)),
  );
  const extra = (layout.has ?? []).filter((path) => !items.some((item) => isBelow(path, item)));
  return [...new Set([...items, ...extra])];
}
