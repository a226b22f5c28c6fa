import { readdir, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** Copies lie beside the data folder, not in it: what befalls the one folder need not befall the other. */
export const copiesFolder = (dataFolder: string): string => join(dirname(dataFolder), `${basename(dataFolder)} copies`);

const daily = /^record (\d{4}-\d{2}-\d{2})\.sqlite$/;

export const dailyCopyName = (day: string): string => `record ${day}.sqlite`;

/** The one made before a newer program changes how the record is kept; never taken away by the program. */
export const migrationCopyName = (version: number, atMs: number): string =>
  `record before version ${version + 1}, ${new Date(atMs).toISOString().replaceAll(':', '-')}.sqlite`;

const keptDays = 14;

/** Days whose copies are kept: the newest fourteen, and of what is older the first of each month. */
export const daysToKeep = (days: readonly string[]): Set<string> => {
  const sorted = [...days].sort().reverse();
  const firstOfMonth = new Map(sorted.map((day) => [day.slice(0, 7), day]));
  return new Set([...sorted.slice(0, keptDays), ...firstOfMonth.values()]);
};

/** Takes away the daily copies that are no longer kept. */
export const rotateCopies = async (folder: string): Promise<void> => {
  const names = await readdir(folder);
  const days = names.flatMap((name) => daily.exec(name)?.[1] ?? []);
  const kept = daysToKeep(days);
  for (const day of days) if (!kept.has(day)) await rm(join(folder, dailyCopyName(day)), { force: true });
};
