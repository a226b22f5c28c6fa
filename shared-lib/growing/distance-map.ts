/** Finite, so that two of them have a difference. */
const far = 1e12;

/**
 * Per pixel: distance to the nearest pixel that is set, px; infinite where none is.
 *
 * Source: Felzenszwalb and Huttenlocher, Distance transforms of sampled functions (2012): exact, two passes of lower
 * envelopes of parabolas.
 */
export function distanceMap(isSet: Uint8Array, width: number, height: number): Float32Array {
  const squares = new Float32Array(width * height);
  for (let at = 0; at < squares.length; at += 1) squares[at] = isSet[at] ? 0 : far;
  const longest = Math.max(width, height);
  const line = new Float64Array(longest);
  const feet = new Int32Array(longest);
  const meets = new Float64Array(longest + 1);
  const pass = (start: number, step: number, count: number): void => {
    for (let i = 0; i < count; i += 1) line[i] = squares[start + i * step] as number;
    let last = 0;
    feet[0] = 0;
    meets[0] = Number.NEGATIVE_INFINITY;
    meets[1] = Number.POSITIVE_INFINITY;
    for (let i = 1; i < count; i += 1) {
      const own = (line[i] as number) + i * i;
      let meet = own;
      for (; ; last -= 1) {
        const foot = feet[last] as number;
        meet = (own - (line[foot] as number) - foot * foot) / (2 * (i - foot));
        if (meet > (meets[last] as number)) break;
      }
      last += 1;
      feet[last] = i;
      meets[last] = meet;
      meets[last + 1] = Number.POSITIVE_INFINITY;
    }
    last = 0;
    for (let i = 0; i < count; i += 1) {
      while ((meets[last + 1] as number) < i) last += 1;
      const foot = feet[last] as number;
      squares[start + i * step] = (line[foot] as number) + (i - foot) ** 2;
    }
  };
  for (let x = 0; x < width; x += 1) pass(x, width, height);
  for (let y = 0; y < height; y += 1) pass(y * width, 1, width);
  for (let at = 0; at < squares.length; at += 1) {
    const square = squares[at] as number;
    squares[at] = square >= far / 2 ? Number.POSITIVE_INFINITY : Math.sqrt(square);
  }
  return squares;
}
