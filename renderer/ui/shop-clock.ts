/** A moment as the shop's clock has it, `2026-06-08T08:10`; the zone as `+01:00`. */
const onClock = (atMs: number, timeZone: string): string => {
  const sign = timeZone.startsWith('-') ? -1 : 1;
  const eastMin = sign * (Number(timeZone.slice(1, 3)) * 60 + Number(timeZone.slice(4, 6)));
  return new Date(atMs + eastMin * 60_000).toISOString();
};

/** `08:10` */
export function timeWords(atMs: number, timeZone: string): string {
  return onClock(atMs, timeZone).slice(11, 16);
}

/** The day it was there, `2026-06-08`: near midnight another than it was elsewhere. */
export function dateOnClock(atMs: number, timeZone: string): string {
  return onClock(atMs, timeZone).slice(0, 10);
}
