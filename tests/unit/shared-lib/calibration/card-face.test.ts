import { expect, test } from 'vitest';
import {
  type CardFace,
  cardFaces,
  columns,
  hasDot,
  isDark,
  rows,
} from '../../../../shared-lib/calibration/card/face.ts';

const turned = (turns: number, x: number, y: number): readonly [number, number] => {
  if (turns === 0) return [x, y];
  if (turns === 1) return [-y, x];
  return turns === 2 ? [-x, -y] : [y, -x];
};

/** The least share of squares that differ, over every way to lay a part of one face on the other with colours agreeing. */
const leastDifference = (one: CardFace, other: CardFace): number => {
  let least = 1;
  for (const turns of [0, 1, 2, 3]) {
    for (let dx = -20; dx <= 20; dx += 1) {
      for (let dy = -20; dy <= 20; dy += 1) {
        if (one === other && turns === 0 && dx === 0 && dy === 0) continue;
        let [common, differ, clash] = [0, 0, false];
        for (let row = 0; row < rows; row += 1) {
          for (let column = 0; column < columns; column += 1) {
            const [x, y] = turned(turns, column, row);
            const there = hasDot(other, x + dx, y + dy);
            if (there === null) continue;
            clash ||= isDark(column, row) !== isDark(x + dx, y + dy);
            common += 1;
            if (there !== hasDot(one, column, row)) differ += 1;
          }
        }
        if (!clash && common >= 20) least = Math.min(least, differ / common);
      }
    }
  }
  return least;
};

test('no part of 20 squares of a face is taken for another part, another way up, or another face', () => {
  for (const one of cardFaces) {
    for (const other of cardFaces) expect(leastDifference(one, other)).toBeGreaterThan(0.35);
  }
});

test('every row and column of dots is there', () => {
  for (const { dots } of cardFaces) {
    expect(dots).toHaveLength(rows);
    for (const row of dots) expect(row).toMatch(new RegExp(`^[o.]{${columns}}$`));
  }
});
