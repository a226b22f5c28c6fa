import type { ImagePoint } from '../../model/mark.ts';
import type { PrintedPoint } from '../model.ts';

/** A photo's place on paper: a window of `widthMm` by `heightMm` onto the picture. */
export interface Frame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly picture: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number };
  readonly mmPerPixel: number;
  /** Whether some of the picture lies outside the window. */
  readonly isPart: boolean;
}

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

export interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** No photo is printed narrower: below it a hairline mark can't be read. Source: the handbook's rule for printed photos. */
export const leastPhotoWidthMm = 80;
/** A picture taller than this at its least width would push everything else off the page. */
const tallestMm = 150;
/** Closer than this, pixels of the screen-sized photo would show in print. */
const closest = 2.5;
/** Room round the marks: the window is at least this many times as wide and high as they are. */
const roomRoundMarks = 2.2;

export function boxOf(points: readonly ImagePoint[]): PixelBox | null {
  if (points.length === 0) return null;
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const least = (values: number[]) => values.reduce((a, b) => Math.min(a, b));
  const most = (values: number[]) => values.reduce((a, b) => Math.max(a, b));
  return { left: least(xs), top: least(ys), right: most(xs), bottom: most(ys) };
}

/** The window's start so that it is centred on `middle` and stays inside `whole`. */
function startOf(middle: number, window: number, whole: number): number {
  return Math.min(Math.max(middle - window / 2, 0), Math.max(whole - window, 0));
}

function frameOnto(size: PixelSize, marks: PixelBox | null, window: PixelSize, widthMm: number): Frame {
  const mmPerPixel = widthMm / window.width;
  const middle = marks
    ? { x: (marks.left + marks.right) / 2, y: (marks.top + marks.bottom) / 2 }
    : { x: size.width / 2, y: size.height / 2 };
  return {
    widthMm,
    heightMm: window.height * mmPerPixel,
    picture: {
      xMm: -startOf(middle.x, window.width, size.width) * mmPerPixel,
      yMm: -startOf(middle.y, window.height, size.height) * mmPerPixel,
      widthMm: size.width * mmPerPixel,
      heightMm: size.height * mmPerPixel,
    },
    mmPerPixel,
    isPart: window.width < size.width - 0.5 || window.height < size.height - 0.5,
  };
}

/**
 * The whole picture inside `most`, never narrower than 80 mm. Only a picture so tall that this would fill the page is
 * cut above and below its marks.
 */
export function wholeFrame(
  size: PixelSize,
  marks: PixelBox | null,
  most: { widthMm: number; heightMm: number },
): Frame {
  const fitted = Math.min(most.widthMm, (most.heightMm * size.width) / size.height);
  const widthMm = Math.max(fitted, leastPhotoWidthMm);
  const height = Math.min(size.height, (tallestMm * size.width) / widthMm);
  return frameOnto(size, marks, { width: size.width, height }, widthMm);
}

/** How much higher than its marks a window is that had to grow for them. */
const roomOverMarks = 1.1;

/**
 * A window onto the part of the picture that holds the marks. Marks that stand higher than its shape can show are given up
 * to `growMm` more.
 */
export function partFrame(
  size: PixelSize,
  marks: PixelBox | null,
  window: { widthMm: number; heightMm: number; growMm?: number },
): Frame {
  const marksMm = marks === null ? 0 : (marks.bottom - marks.top) * roomOverMarks * (window.widthMm / size.width);
  const heightMm = Math.max(window.heightMm, Math.min(marksMm, window.heightMm + (window.growMm ?? 0)));
  const aspect = window.widthMm / heightMm;
  const widest = Math.min(size.width, size.height * aspect);
  const wanted = marks
    ? Math.max((marks.right - marks.left) * roomRoundMarks, (marks.bottom - marks.top) * roomRoundMarks * aspect)
    : widest;
  const width = Math.min(Math.max(wanted, size.width / closest), widest);
  return frameOnto(size, marks, { width, height: width / aspect }, window.widthMm);
}

/** Pixel centres stand at whole numbers, so the picture's corner is at (-0.5, -0.5). */
export function onPaper(frame: Frame, point: ImagePoint): PrintedPoint {
  return [
    frame.picture.xMm + (point.x + 0.5) * frame.mmPerPixel,
    frame.picture.yMm + (point.y + 0.5) * frame.mmPerPixel,
  ];
}
