import type { Verdict } from '../model/reading.ts';
import type { LimitBar } from './limit-bar.ts';

type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/** `gap`: the limit seen through the bar that crosses it. `cut`: the bar goes on further than there is room. */
export type BarPen = 'scale' | 'watch' | 'gap' | 'cut' | 'bracket';

/** A bar as lines, the same in window and report; all of them have their limit at the same place. */
export interface BarDrawing {
  readonly height: number;
  readonly value: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** In the order they are drawn, over the value. */
  readonly strokes: readonly { readonly pen: BarPen; readonly segments: readonly Segment[] }[];
}

export const barWidth = 190;
/** Where every limit stands. */
export const barLimitX = 112;

const longest = barWidth - 8;
const scaleY = 26;
const along = (share: number): number => Math.min(barWidth - 2, share * barLimitX);

/**
 * A bar to where the value is, the bracket of what it can be off by, and the scale under it. Past the line is beyond.
 *
 * @param isThin  one of many under each other: no scale and no bracket
 */
export function drawLimitBar(bar: LimitBar, verdict: Verdict, isThin: boolean): BarDrawing {
  const isBeyond = verdict === 'beyond' && bar.value > 1;
  const isCut = bar.value * barLimitX > longest;
  const end = Math.min(longest, Math.max(1.5, bar.value * barLimitX));
  const middle = isThin ? 12 : 18;
  const thickness = isThin ? (isBeyond ? 6 : 3) : isBeyond ? 10 : 4;
  const ticks = Array.from({ length: 9 }, (_, tick): Segment => {
    const x = (tick * barLimitX) / 5 + 0.5;
    return [x, scaleY, x, scaleY + (tick % 5 === 0 ? 6 : 4)];
  });
  const strokes: { pen: BarPen; segments: readonly Segment[] }[] = [];
  if (!isThin) strokes.push({ pen: 'scale', segments: [[0, scaleY, barWidth, scaleY], ...ticks] });
  if (bar.watchFrom !== null) {
    const x = along(bar.watchFrom);
    strokes.push({ pen: 'watch', segments: [[x, 6, x, isThin ? 18 : 32]] });
  }
  if (isBeyond) {
    strokes.push({ pen: 'gap', segments: [[barLimitX, middle - thickness / 2, barLimitX, middle + thickness / 2]] });
  }
  if (isCut) {
    const slash = (x: number): Segment => [x, middle + thickness, x + 6, middle - thickness];
    strokes.push({ pen: 'cut', segments: [slash(longest - 34), slash(longest - 26)] });
  }
  if (!isThin && bar.bracket !== null && along(bar.bracket[0]) < barWidth - 4) {
    const [from, to] = [along(bar.bracket[0]), along(bar.bracket[1])];
    strokes.push({
      pen: 'bracket',
      segments: [
        [from, 4, from, 12],
        [from, 8, to, 8],
        [to, 4, to, 12],
      ],
    });
  }
  return {
    height: isThin ? 24 : 34,
    value: { x: 0, y: middle - thickness / 2, width: end, height: thickness },
    strokes,
  };
}
