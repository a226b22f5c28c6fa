/** `08:10` on the shop's clock (`+01:00`). */
export function timeWords(atMs: number, timeZone: string): string {
  const sign = timeZone.startsWith('-') ? -1 : 1;
  const eastMin = sign * (Number(timeZone.slice(1, 3)) * 60 + Number(timeZone.slice(4, 6)));
  return new Date(atMs + eastMin * 60_000).toISOString().slice(11, 16);
}
