import { AppError } from '../contract/errors.ts';
import type { Layout } from '../model/layout.ts';
import { checkLocation } from '../parts/check-location.ts';
import { isBelow } from '../parts/is-below.ts';
import { parseLocation } from '../parts/parse-location.ts';
import { sheets } from '../sheets/index.ts';
import type { Sheet } from '../sheets/sheet-kind.ts';

/** The shelves sheets lie on, in the order they stand. */
export const sheetGroups = [
  'Battery, starting, charging',
  'Cooling',
  'Cylinders and head',
  'Crank, oil and fuel',
  'Hydraulics',
  'Steering, brakes, lifting',
  'Any part',
] as const;
export type SheetGroup = (typeof sheetGroups)[number];

interface SheetPlace {
  readonly group: SheetGroup;
  /** Where it is usually taken, first the most usual: a part, or what is below it. */
  readonly parts: readonly string[];
}

/** Source: the handbook's sheets, each with the part it is taken at; common practice, no source. */
const places: Readonly<Record<string, SheetPlace>> = {
  'MS-01': { group: 'Battery, starting, charging', parts: ['ELEC/BAT'] },
  'MS-02': { group: 'Battery, starting, charging', parts: ['ELEC/BAT'] },
  'MS-03': { group: 'Battery, starting, charging', parts: ['ELEC/STR'] },
  'MS-04': { group: 'Battery, starting, charging', parts: ['ELEC/CBL', 'ELEC/GND', 'ELEC/SOL', 'ELEC/MSW'] },
  'MS-05': { group: 'Battery, starting, charging', parts: ['ELEC/ALT', 'ELEC/REG'] },
  'MS-06': { group: 'Cooling', parts: ['COOL/CAP'] },
  'MS-07': { group: 'Cooling', parts: ['COOL'] },
  'MS-08': { group: 'Cooling', parts: ['COOL'] },
  'MS-09': { group: 'Cooling', parts: ['COOL/RAD/NECK', 'ENG/HG'] },
  'MS-26': { group: 'Cooling', parts: ['COOL/COOLANT'] },
  'MS-10': { group: 'Cylinders and head', parts: ['ENG'] },
  'MS-11': { group: 'Cylinders and head', parts: ['ENG/PST', 'ENG/RING', 'ENG/HG'] },
  'MS-12': { group: 'Cylinders and head', parts: ['ENG/LNR', 'ENG/BLK/BORE'] },
  'MS-13': { group: 'Cylinders and head', parts: ['ENG/BLK/DECK', 'ENG/HD'] },
  'MS-14': { group: 'Cylinders and head', parts: ['ENG/LNR', 'ENG/BLK/CBORE'] },
  'MS-15': { group: 'Cylinders and head', parts: ['ENG/PST', 'ENG/RING'] },
  'MS-16': { group: 'Cylinders and head', parts: ['ENG/HD'] },
  'MS-29': { group: 'Cylinders and head', parts: ['ENG/HD', 'ENG/BLK'] },
  'MS-17': { group: 'Crank, oil and fuel', parts: ['ENG/CRK', 'ENG/ROD'] },
  'MS-18': { group: 'Crank, oil and fuel', parts: ['FUEL/INJ'] },
  'MS-27': { group: 'Crank, oil and fuel', parts: ['ENG/LUB'] },
  'MS-30': { group: 'Crank, oil and fuel', parts: ['ENG/EXH'] },
  'MS-20': { group: 'Hydraulics', parts: ['HYD/CYL'] },
  'MS-25': { group: 'Hydraulics', parts: ['HYD/PUMPH', 'HYD/RV', 'HYD/CYL'] },
  'MS-21': { group: 'Steering, brakes, lifting', parts: ['STEER'] },
  'MS-22': { group: 'Steering, brakes, lifting', parts: ['BRK'] },
  'MS-28': { group: 'Steering, brakes, lifting', parts: ['FRM/MAST', 'DRV/WHEEL', 'PROT/GUARD'] },
  'MS-19': { group: 'Any part', parts: [] },
  'MS-23': { group: 'Any part', parts: ['INST/HRM'] },
  'MS-24': { group: 'Any part', parts: [] },
  'MS-31': { group: 'Any part', parts: [] },
  'MS-32': { group: 'Any part', parts: [] },
};

const anyPart: SheetPlace = { group: 'Any part', parts: [] };

const placeOf = (sheetId: string): SheetPlace =>
  (Object.hasOwn(places, sheetId) ? places[sheetId] : undefined) ?? anyPart;

/** Ids that stand here; a test holds them against the sheets there are. */
export const placedSheets: readonly string[] = Object.keys(places);

/** Whether a sheet is usually taken at a part, above it or below it. */
export function fitsPart(sheetId: string, path: string): boolean {
  return placeOf(sheetId).parts.some((part) => isBelow(path, part) || isBelow(part, path));
}

/** Where a sheet is usually taken on this machine; null where any part will do. */
export function usualPlace(sheetId: string, layout: Layout): string | null {
  return placeOf(sheetId).parts.find((part) => isOn(part, layout)) ?? null;
}

function isOn(part: string, layout: Layout): boolean {
  try {
    checkLocation(parseLocation(part), layout);
    return true;
  } catch (error) {
    if (error instanceof AppError) return false;
    throw error;
  }
}

export interface SheetShelf {
  readonly group: string;
  readonly sheets: readonly Sheet[];
}

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];

/** How well a sheet answers to the words asked for: by its name, its shelf, then by a field or result of it. */
function foundBy(sheet: Sheet, asked: readonly string[]): number | null {
  const labels = [...Object.values(sheet.inputs), ...Object.values(sheet.conditions)].map(({ label }) => label);
  const texts = [sheet.name, placeOf(sheet.id).group, ...labels, ...Object.keys(sheet.results), sheet.about];
  const within = (count: number) => {
    const words = texts.slice(0, count).flatMap(wordsOf);
    return asked.every((word) => words.some((each) => each.startsWith(word)));
  };
  const found = [1, 2, texts.length].find(within) ?? null;
  // Called exactly so: the coolant before combustion gas in the coolant.
  return found === 1 && wordsOf(sheet.name).length === asked.length ? 0 : found;
}

/** The sheets on their shelves; with a word, those it finds, the ones that are called so first. */
export function sheetShelves(find: string, part: string | null): readonly SheetShelf[] {
  const asked = wordsOf(find);
  if (asked.length > 0) {
    const found = sheets.flatMap((sheet) => {
      const by = foundBy(sheet, asked);
      return by === null ? [] : [{ sheet, by }];
    });
    const ordered = found.toSorted((a, b) => a.by - b.by);
    return ordered.length === 0 ? [] : [{ group: 'Found', sheets: ordered.map(({ sheet }) => sheet) }];
  }
  const fitting = part === null ? [] : sheets.filter(({ id }) => fitsPart(id, part));
  const shelves = sheetGroups.map((group) => ({
    group,
    sheets: sheets.filter(({ id }) => placeOf(id).group === group),
  }));
  return [...(fitting.length === 0 ? [] : [{ group: 'For this part', sheets: fitting }]), ...shelves].filter(
    (shelf) => shelf.sheets.length > 0,
  );
}
