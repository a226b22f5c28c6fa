/** What the stage draws on: a layer in the window, or a bitmap in the making. */
export type Paint = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;
