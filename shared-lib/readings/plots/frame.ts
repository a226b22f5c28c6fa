import { scaleLinear } from 'd3-scale';
import { label, open, type Primitive } from '../../diagrams/drawing.ts';

/** The field that a plot is drawn in, with scales that begin and end at round numbers. */
export interface Frame {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  readonly axes: readonly Primitive[];
}

interface FrameOptions {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly xTitle: string;
  readonly yTitle: string;
  /** Values grow downwards, as depths do. */
  readonly down?: boolean;
  readonly width?: number;
  readonly height?: number;
  /** Words instead of the numbers of a scale. */
  readonly xNames?: readonly { readonly at: number; readonly name: string }[];
  readonly yNames?: readonly { readonly at: number; readonly name: string }[];
}

const margin = { left: 76, right: 24, top: 30, bottom: 44 };

const spanOf = (values: readonly number[]): [number, number] => {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (least < most) return [least, most];
  const room = Math.abs(least) > 0 ? Math.abs(least) * 0.1 : 1;
  return [least - room, most + room];
};

const written = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '\u2212');

/** Axes with graduations that fit the numbers. */
export function frameOf(options: FrameOptions): Frame {
  const { xTitle, yTitle, down = false, width = 460, height = 300, xNames, yNames } = options;
  const [left, right] = [margin.left, width - margin.right];
  const [top, bottom] = [margin.top, height - margin.bottom];
  const xScale = scaleLinear().domain(spanOf(options.x)).range([left, right]);
  const yScale = scaleLinear()
    .domain(spanOf(options.y))
    .range(down ? [top, bottom] : [bottom, top]);
  if (xNames === undefined) xScale.nice(5);
  if (yNames === undefined) yScale.nice(5);
  const xTicks = xNames ?? xScale.ticks(5).map((at) => ({ at, name: written(at) }));
  const yTicks = yNames ?? yScale.ticks(5).map((at) => ({ at, name: written(at) }));
  const axes: Primitive[] = [
    open([
      { x: left, y: top },
      { x: left, y: bottom },
      { x: right, y: bottom },
    ]),
    ...xTicks.flatMap(({ at, name }): Primitive[] => [
      open(
        [
          { x: xScale(at), y: bottom },
          { x: xScale(at), y: bottom + 5 },
        ],
        'hair',
      ),
      label(xScale(at), bottom + 20, name, 'middle', 'number'),
    ]),
    ...yTicks.flatMap(({ at, name }): Primitive[] => [
      open(
        [
          { x: left - 5, y: yScale(at) },
          { x: left, y: yScale(at) },
        ],
        'hair',
      ),
      label(left - 9, yScale(at) + 5, name, 'end', 'number'),
    ]),
    label(right, bottom + 38, xTitle, 'end'),
    label(0, 14, yTitle, 'start'),
  ];
  return { x: xScale, y: yScale, left, right, top, bottom, width, height, axes };
}
