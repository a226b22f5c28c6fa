const readMoment = (typed: string): number | null => {
  const match = /^\s*(?:(\d{4})-(\d{2})-(\d{2})[ T])?(\d{1,2}):(\d{2})(?::(\d{2}))?\s*$/.exec(typed);
  if (match === null) return null;
  const [, year = '2000', month = '01', day = '01', hour = '', minute = '', second = '0'] = match;
  const parts = [year, month, day, hour, minute, second].map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [y, mo, d, h, mi, s] = parts;
  if (h > 23 || mi > 59 || s > 59) return null;
  const at = new Date(Date.UTC(y, mo - 1, d, h, mi, s));
  return at.getUTCMonth() === mo - 1 && at.getUTCDate() === d ? at.getTime() : null;
};

const hasDate = (typed: string): boolean => /\d{4}-/.test(typed);

/**
 * What must be added to the camera's times, from its clock and the true one read at the same moment. Both with a date, or
 * both as `10:42` alone.
 *
 * @returns milliseconds, or null while the two are not two moments of one kind
 */
export function offsetFromClocks(cameraShows: string, itIs: string): number | null {
  const [camera, real] = [readMoment(cameraShows), readMoment(itIs)];
  if (camera === null || real === null || hasDate(cameraShows) !== hasDate(itIs)) return null;
  return real - camera;
}
