import { checkBar } from '../calibration/card/check-bar.ts';
import { type CardFace, cardFaces, columns, dotRadius, isDark, quietSquares, rows } from '../calibration/card/face.ts';

/** One face as it is printed; all places in squares, row by row. */
export interface PrintedFace {
  readonly name: CardFace['name'];
  readonly squareMm: number;
  readonly size: string;
  readonly dark: readonly (readonly [number, number])[];
  /** Middles of the dots in light squares, then of those in dark ones. */
  readonly darkDots: readonly (readonly [number, number])[];
  readonly lightDots: readonly (readonly [number, number])[];
}

/** Everything that stands on the sheet; the template only lays it out. */
export interface CardSheet {
  readonly title: string;
  readonly columns: number;
  readonly rows: number;
  readonly quietSquares: number;
  readonly dotRadius: number;
  readonly faces: readonly PrintedFace[];
  readonly bars: { readonly mm: number; readonly inches: number; readonly uprightMm: number };
  readonly barWords: string;
  readonly steps: readonly { readonly name: string; readonly words: string }[];
  readonly paperWords: string;
}

function printed(face: CardFace): PrintedFace {
  const squares = Array.from({ length: columns * rows }, (_, k) => [k % columns, Math.floor(k / columns)] as const);
  const dotted = squares.filter(([column, row]) => face.dots[row]?.[column] === 'o');
  const middle = ([column, row]: readonly [number, number]) => [column + 0.5, row + 0.5] as const;
  return {
    name: face.name,
    squareMm: face.squareMm,
    size: `${columns * face.squareMm} \u00d7 ${rows * face.squareMm} mm`,
    dark: squares.filter(([column, row]) => isDark(column, row)),
    darkDots: dotted.filter(([column, row]) => !isDark(column, row)).map(middle),
    lightDots: dotted.filter(([column, row]) => isDark(column, row)).map(middle),
  };
}

export function cardSheet(): CardSheet {
  return {
    title: 'Calibration cards',
    paperWords: 'Print at 100 %, actual size',
    columns,
    rows,
    quietSquares,
    dotRadius,
    faces: cardFaces.map(printed),
    bars: { mm: checkBar.mm, inches: 6, uprightMm: 100 },
    barWords: 'Check with a steel rule',
    steps: [
      { name: 'Print', words: 'On matt white paper, black only. Not fitted to the page: that makes every size wrong.' },
      {
        name: 'Check',
        words: `Lay a steel rule on the bars. What the ${checkBar.mm} mm bar reads is asked for when a card is looked for, and every size is put right by it. If the upright bar is off by another share than the level one, print anew.`,
      },
      {
        name: 'Mount',
        words: 'Cut along the fine line and glue the card to something flat and stiff. A bent card measures wrongly.',
      },
      { name: 'Beforehand', words: 'Machine stopped and secured, the part cool, the maker\u2019s precautions kept.' },
      {
        name: 'Lay it down',
        words:
          'On the face that is measured, beside the crack or patch and no higher. What lies above or below the card is measured wrongly. The whole card in the photo, in focus, a quarter of its width or more.',
      },
    ],
  };
}
