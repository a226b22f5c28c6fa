import type { Shot } from '../model/shot.ts';
import type { Moment } from '../model/time.ts';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const wallClock = (atMs: number, zoneOffsetMin: number): Date => new Date(atMs + zoneOffsetMin * 60_000);

export function dayOf(atMs: number, zoneOffsetMin: number): CalendarDay {
  const clock = wallClock(atMs, zoneOffsetMin);
  return { year: clock.getUTCFullYear(), month: clock.getUTCMonth() + 1, day: clock.getUTCDate() };
}

/** `8 June 2026` */
export function sayDay({ year, month, day }: CalendarDay): string {
  return `${day} ${months[month - 1] ?? ''} ${year}`;
}

/** A record's `2026-06-08`; what does not read as a day stays as it is. */
export function sayIsoDay(iso: string): string {
  const [year, month, day] = iso.split('-').map(Number);
  return year && month && day && months[month - 1] ? sayDay({ year, month, day }) : iso;
}

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** `8 June 2026 10:12`, on the clock it was read on. */
export function sayMoment({ atMs, zoneOffsetMin }: Pick<Moment, 'atMs' | 'zoneOffsetMin'>): string {
  const clock = wallClock(atMs, zoneOffsetMin);
  const time = `${twoDigits(clock.getUTCHours())}:${twoDigits(clock.getUTCMinutes())}`;
  return `${sayDay(dayOf(atMs, zoneOffsetMin))} ${time}`;
}

/** `+01:00` */
export function sayZone(zoneOffsetMin: number): string {
  const minutes = Math.abs(zoneOffsetMin);
  return `${zoneOffsetMin < 0 ? '\u2212' : '+'}${twoDigits(Math.floor(minutes / 60))}:${twoDigits(minutes % 60)}`;
}

/** EXIF's local text, `2026:06:08 10:12:30`, is no instant: it is said as the camera's own. */
function sayLocal(local: string): string | null {
  const read = /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d)/.exec(local);
  if (!read) return null;
  const [, year, month, day, hour, minute] = read;
  return `${sayDay({ year: Number(year), month: Number(month), day: Number(day) })} ${hour}:${minute} by the camera`;
}

/** When a photo was taken, as far as anybody has said. */
export function sayTaken({ taken, takenLocal }: Pick<Shot, 'taken' | 'takenLocal'>): string {
  if (taken) return sayMoment(taken);
  return (takenLocal === null ? null : sayLocal(takenLocal)) ?? 'time not known';
}
