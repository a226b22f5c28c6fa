import type { Primitive } from '../../diagrams/drawing.ts';

/** A plot as plain lines and words: the window draws it as SVG, the report as its own curves, from the same numbers. */
export interface Plot {
  /** What it shows and in which unit; also what is spoken of it. */
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly primitives: readonly Primitive[];
}
