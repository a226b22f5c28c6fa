/** The colours and type that the canvas needs; the rest of the window has them from the style sheet itself. */
export interface Look {
  readonly edge: string;
  readonly halo: string;
  readonly line: string;
  readonly plateInk: string;
  readonly backdrop: string;
  readonly tagFont: string;
  readonly labelFont: string;
  /** Widths of the three strokes in CSS pixels; a picked mark's white line is wider, and the others grow with it. */
  readonly widths: { readonly edge: number; readonly halo: number; readonly line: number; readonly picked: number };
  /** How much larger than drawn the tags stand: as much as all type grows in the bench size. */
  readonly tagScale: number;
}

/** The size of the smallest type at which a tag stands in its own size. */
const usualTypePx = 15;

/** Reads the theme's tokens where the stage stands, so that a canvas follows the style sheet. */
export function readLook(element: Element): Look {
  const style = getComputedStyle(element);
  const token = (name: string) => style.getPropertyValue(name).trim();
  const pixels = (name: string) => Number.parseFloat(token(name));
  return {
    edge: token('--mark-edge'),
    halo: token('--mark-halo'),
    line: token('--mark-line'),
    plateInk: token('--mark-edge'),
    backdrop: token('--stage'),
    tagFont: token('--cond'),
    labelFont: token('--semi'),
    widths: {
      edge: pixels('--mark-edge-w'),
      halo: pixels('--mark-halo-w'),
      line: pixels('--mark'),
      picked: pixels('--mark-picked'),
    },
    tagScale: pixels('--t1') / usualTypePx,
  };
}
