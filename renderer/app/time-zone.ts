/** `+01:00` from minutes east of UTC. */
export function zoneText(minutesEast: number): string {
  const sign = minutesEast < 0 ? '-' : '+';
  const absolute = Math.abs(minutesEast);
  const hours = String(Math.floor(absolute / 60)).padStart(2, '0');
  return `${sign}${hours}:${String(absolute % 60).padStart(2, '0')}`;
}

/** The zone this computer's clock stands in now. */
export function zoneOfThisComputer(): string {
  return zoneText(-new Date().getTimezoneOffset());
}

/** Understands `+1`, `-05:30`, `1:00`; null where it is no zone within 14 hours. */
export function readZone(typed: string): string | null {
  const match = /^\s*([+\-\u2212]?)\s*(\d{1,2})(?::?([0-5]\d))?\s*$/.exec(typed);
  if (match === null) return null;
  const minutes = Number(match[2]) * 60 + Number(match[3] ?? 0);
  if (minutes > 14 * 60) return null;
  return zoneText(match[1] === '-' || match[1] === '\u2212' ? -minutes : minutes);
}
