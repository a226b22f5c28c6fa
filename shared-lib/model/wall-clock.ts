/** `+05:30` to minutes east of UTC. */
export const zoneMinutes = (timeZone: string): number => {
  const sign = timeZone.startsWith('-') ? -1 : 1;
  return sign * (Number(timeZone.slice(1, 3)) * 60 + Number(timeZone.slice(4, 6)));
};

/** What a clock on the wall shows at a moment, as if it were UTC's: `2026-06-08T08:10:30.000Z`. */
const shown = (atMs: number, zoneOffsetMin: number): string => new Date(atMs + zoneOffsetMin * 60_000).toISOString();

/** The day it was there, `2026-06-08`: near midnight another than it was elsewhere. */
export const isoDayAt = (atMs: number, zoneOffsetMin: number): string => shown(atMs, zoneOffsetMin).slice(0, 10);

/** `08:10` */
export const timeOfDayAt = (atMs: number, zoneOffsetMin: number): string => shown(atMs, zoneOffsetMin).slice(11, 16);
