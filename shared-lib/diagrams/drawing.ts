import type { XY } from '../geometry/spaces.ts';
import type { Location } from '../parts/location.ts';

/** Edges of the part, lines within it, and what is only hinted at. */
export type LineWeight = 'edge' | 'line' | 'hair';

/** All a diagram is drawn with: window and report need no more. Units are CSS pixels at natural size, y down. */
export type Primitive =
  | { readonly kind: 'circle'; readonly centre: XY; readonly radius: number; readonly weight: LineWeight }
  | {
      readonly kind: 'path';
      readonly points: readonly XY[];
      readonly closed: boolean;
      readonly weight: LineWeight;
      readonly dashed: boolean;
    }
  | {
      readonly kind: 'label';
      readonly at: XY;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly weight: 'number' | 'word' | 'strong';
    };

/** A part that can be picked where it is drawn. */
export interface DiagramPart {
  readonly path: string;
  readonly name: string;
  readonly outline: readonly XY[];
}

/** Where a place is on the drawing: what a leader points at, and the lines that show its extent. */
export interface Anchor {
  readonly point: XY;
  readonly strokes: readonly (readonly XY[])[];
}

/** A diagram before its tags are hung. */
export interface Scene {
  readonly title: string;
  /** How it is looked at, and what must be minded: one sentence each. */
  readonly notes: readonly string[];
  /** Left and right are swapped: drawn with the mirror's sign. */
  readonly mirrored: boolean;
  /** Cylinder numbers stand in it, so the numbering must be said. */
  readonly numbered: boolean;
  readonly width: number;
  readonly height: number;
  readonly tagsOn: 'top' | 'right';
  readonly primitives: readonly Primitive[];
  readonly parts: readonly DiagramPart[];
  readonly anchorOf: (location: Location) => Anchor | null;
}

export function circle(centre: XY, radius: number, weight: LineWeight = 'line'): Primitive {
  return { kind: 'circle', centre, radius, weight };
}

export function open(points: readonly XY[], weight: LineWeight = 'line', dashed = false): Primitive {
  return { kind: 'path', points, closed: false, weight, dashed };
}

export function closed(points: readonly XY[], weight: LineWeight = 'line', dashed = false): Primitive {
  return { kind: 'path', points, closed: true, weight, dashed };
}

export function label(
  x: number,
  y: number,
  text: string,
  anchor: 'start' | 'middle' | 'end' = 'middle',
  weight: 'number' | 'word' | 'strong' = 'word',
): Primitive {
  return { kind: 'label', at: { x, y }, text, anchor, weight };
}

export function box(left: number, top: number, right: number, bottom: number): readonly XY[] {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** Points along a circle, from one angle to another in radians, y down: a quarter turn from 0 ends below. */
export function arc(centre: XY, radius: number, from: number, to: number): readonly XY[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / 0.2));
  return Array.from({ length: steps + 1 }, (_, index) => {
    const angle = from + ((to - from) * index) / steps;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/** An outline round a circle, for picking. */
export function round(centre: XY, radius: number): readonly XY[] {
  return arc(centre, radius, 0, 2 * Math.PI).slice(0, -1);
}

/** An anchor that is a single point. */
export function pointAt(x: number, y: number): Anchor {
  return { point: { x, y }, strokes: [] };
}

/** An anchor along a line, pointed at in its middle. */
export function lineAt(...points: readonly XY[]): Anchor {
  const first = points[0] ?? { x: 0, y: 0 };
  const last = points.at(-1) ?? first;
  const middle =
    points.length > 2
      ? (points[Math.floor(points.length / 2)] ?? first)
      : { x: (first.x + last.x) / 2, y: (first.y + last.y) / 2 };
  return { point: middle, strokes: [points] };
}

export function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
