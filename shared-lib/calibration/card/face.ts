import type { XY } from '../../geometry/spaces.ts';

/**
 * The face of a calibration card: a field of dark and light squares, some with a dot of the other colour in the middle.
 * Where four squares meet, blur moves nothing; which squares bear a dot says what face it is, which way up, and which part
 * of it is seen. Millimetres from the field's upper left corner, x right, y down; the first square is dark.
 */
export interface CardFace {
  readonly name: 'large' | 'small';
  readonly squareMm: number;
  /** Row by row, `o` where a square bears a dot. */
  readonly dots: readonly string[];
}

export const columns = 9;
export const rows = 6;
/** Radius of a dot in squares. */
export const dotRadius = 0.18;
/** White all round the field, in squares: less, and the outermost squares are not seen against what lies beside the card. */
export const quietSquares = 0.5;

/**
 * Drawn by a search so that however one is laid over itself or the other, turned or shifted, with 20 squares or more in
 * common and colours agreeing, at least 36 in 100 squares differ.
 */
export const cardFaces: readonly CardFace[] = [
  { name: 'large', squareMm: 16, dots: ['o..oooo.o', '..oo.o..o', '...o.oo..', '..oo.....', '.o.ooo.oo', 'oo.o..oo.'] },
  { name: 'small', squareMm: 6, dots: ['oo..ooooo', '..o.o.ooo', '.o....oo.', '..ooooooo', 'o.o....o.', '.o.o.oo..'] },
];

export function isDark(column: number, row: number): boolean {
  return (column + row) % 2 === 0;
}

/** @returns null off the field */
export function hasDot(face: CardFace, column: number, row: number): boolean | null {
  const mark = face.dots[row]?.[column];
  return mark === undefined ? null : mark === 'o';
}

/** Where four squares meet, row by row. */
export const faceCorners: readonly XY[] = Array.from({ length: (columns - 1) * (rows - 1) }, (_, k) => ({
  x: 1 + (k % (columns - 1)),
  y: 1 + Math.floor(k / (columns - 1)),
}));
