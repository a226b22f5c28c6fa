/** `+05:30` to minutes east of UTC. */
export const zoneMinutes = (timeZone: string): number => {
  const sign = timeZone.startsWith('-') ? -1 : 1;
  return sign * (Number(timeZone.slice(1, 3)) * 60 + Number(timeZone.slice(4, 6)));
};
