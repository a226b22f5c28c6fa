import { isoDayAt, timeOfDayAt, zoneMinutes } from '../../shared-lib/model/wall-clock.ts';

/** `08:10`, as the shop's clock had it. */
export const timeWords = (atMs: number, timeZone: string): string => timeOfDayAt(atMs, zoneMinutes(timeZone));

/** `2026-06-08`, as the shop's calendar had it. */
export const dateOnClock = (atMs: number, timeZone: string): string => isoDayAt(atMs, zoneMinutes(timeZone));
