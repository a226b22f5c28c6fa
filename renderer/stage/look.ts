/** The colours and type that the canvas needs; the rest of the window has them from the style sheet itself. */
export interface Look {
  readonly edge: string;
  readonly halo: string;
  readonly line: string;
  readonly plateInk: string;
  readonly backdrop: string;
  readonly tagFont: string;
}

/** Reads the theme's tokens where the stage stands, so that a canvas follows the style sheet. */
export function readLook(element: Element): Look {
  const style = getComputedStyle(element);
  const token = (name: string) => style.getPropertyValue(name).trim();
  return {
    edge: token('--mark-edge'),
    halo: token('--mark-halo'),
    line: token('--mark-line'),
    plateInk: token('--mark-edge'),
    backdrop: token('--stage'),
    tagFont: token('--cond'),
  };
}
