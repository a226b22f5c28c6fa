import { AppError } from '../contract/errors.ts';
import type { Layout } from '../model/layout.ts';
import { checkLocation } from '../parts/check-location.ts';
import { isBelow } from '../parts/is-below.ts';
import { parseLocation } from '../parts/parse-location.ts';
import { sheets } from '../sheets/index.ts';
import { type Sheet, sheetShelfNames } from '../sheets/sheet-kind.ts';

/** Whether a sheet is usually taken at a part, above it or below it. */
export function fitsPart({ takenAt }: Sheet, path: string): boolean {
  return takenAt.some((part) => isBelow(path, part) || isBelow(part, path));
}

/** Where a sheet is usually taken on this machine; null where any part will do. */
export function usualPlace({ takenAt }: Sheet, layout: Layout): string | null {
  return takenAt.find((part) => isOn(part, layout)) ?? null;
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
  const texts = [sheet.name, sheet.shelf, ...labels, ...Object.keys(sheet.results), sheet.about];
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
  const fitting = part === null ? [] : sheets.filter((sheet) => fitsPart(sheet, part));
  const shelves = sheetShelfNames.map((group) => ({
    group,
    sheets: sheets.filter(({ shelf }) => shelf === group),
  }));
  return [...(fitting.length === 0 ? [] : [{ group: 'For this part', sheets: fitting }]), ...shelves].filter(
    (shelf) => shelf.sheets.length > 0,
  );
}
