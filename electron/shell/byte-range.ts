/** Bytes of a file, both ends included. */
export interface ByteRange {
  readonly first: number;
  readonly last: number;
}

/**
 * Reads a Range header of one range of bytes.
 *
 * @param header  `bytes=0-99`, `bytes=100-` or `bytes=-100`; null without one
 * @param size  bytes of the whole file
 * @returns null when the whole file is to be sent (no header, another unit, several ranges, malformed:
 *   RFC 9110, 14.2 lets a server ignore those), 'unsatisfiable' when nothing of the range is in the file
 */
export function byteRange(header: string | null, size: number): ByteRange | 'unsatisfiable' | null {
  const match = /^bytes=(\d*)-(\d*)$/.exec(header ?? '');
  const [, from = '', to = ''] = match ?? [];
  if (from === '' && to === '') return null;
  if (from === '') {
    const wanted = Number(to);
    return wanted === 0 || size === 0 ? 'unsatisfiable' : { first: Math.max(0, size - wanted), last: size - 1 };
  }
  const first = Number(from);
  const last = to === '' ? size - 1 : Math.min(Number(to), size - 1);
  if (to !== '' && Number(to) < first) return null;
  return first >= size ? 'unsatisfiable' : { first, last };
}
