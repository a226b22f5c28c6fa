import type { XY } from '../../geometry/spaces.ts';
import { componentsAlong } from '../../parts/find-component.ts';
import { formatPath } from '../../parts/format-location.ts';
import type { Location } from '../../parts/location.ts';
import { speakComponent } from '../../parts/speak-component.ts';
import {
  type Anchor,
  box,
  circle,
  clamp,
  closed,
  type DiagramPart,
  label,
  lineAt,
  open,
  type Primitive,
  pointAt,
  type Scene,
} from '../drawing.ts';
import type { DiagramKind } from '../kind.ts';

const width = 308;
const from = 42;
const to = width - 42;
const axisY = 46;
const sag = 14;
const half = 7;
const steps = 48;

/** The middle of the hose, sagging once, at a part of its length from 0 at the pump end to 1. */
function onRun(part: number, offset = 0): XY {
  return { x: from + (to - from) * part, y: axisY + sag * Math.sin(part * Math.PI) + offset };
}

function run(start: number, end: number, offset: number): readonly XY[] {
  const count = Math.max(2, Math.ceil(Math.abs(end - start) * steps));
  return Array.from({ length: count + 1 }, (_, index) => onRun(start + ((end - start) * index) / count, offset));
}

function fitting(x: number, way: -1 | 1): Primitive[] {
  return [
    closed(box(Math.min(x, x + way * 14), axisY - 10, Math.max(x, x + way * 14), axisY + 10), 'edge'),
    closed(
      box(Math.min(x + way * 14, x + way * 26), axisY - 7, Math.max(x + way * 14, x + way * 26), axisY + 7),
      'line',
    ),
    circle({ x: x + way * 34, y: axisY }, 5, 'line'),
  ];
}

/** A hose's length is nobody's to know: long enough for what is written. */
function lengthMm(locations: readonly Location[]): number {
  return Math.max(1000, ...locations.map(({ qualifiers }) => (qualifiers.depth?.toMm ?? 0) * 1.3));
}

function endOf(location: Location): number | null {
  const node = location.path.at(-1);
  const end = node?.code === 'END' || node?.code === 'CRIMP' ? node.indices[0] : location.qualifiers.end;
  return end === 'A' ? 0 : end === 'B' ? 1 : null;
}

function anchorOf(location: Location, mm: number): Anchor {
  const { depth, clock } = location.qualifiers;
  const end = endOf(location);
  const below = clock !== undefined && clock.fromHour > 3 && clock.fromHour < 9;
  const offset = below ? half : -half;
  if (depth !== undefined) {
    // Distances are from the pump end, or from the end that is named.
    const part = (value: number) => clamp(end === 1 ? 1 - value / mm : value / mm, 0, 1);
    const first = part(depth.fromMm);
    const last = part(depth.toMm);
    return lineAt(...run(clamp(first - 0.025, 0, 1), clamp(last + 0.025, 0, 1), offset));
  }
  if (end !== null) return pointAt(end === 0 ? from - 7 : to + 7, axisY - 10);
  const middle = onRun(0.5, offset);
  return pointAt(middle.x, middle.y);
}

const lined = ['HOSE', 'TUBE', 'HPL'];

/** What the far end is fitted to: an actuator, an injector, or just the other part. */
function farEnd(subject: string): string {
  if (subject.includes('HPL')) return 'injector end';
  return subject.startsWith('COOL') ? 'far end' : 'actuator end';
}

function linePath({ path }: Location): string | null {
  if (path[0]?.code === 'ENG') return null;
  const at = path.findIndex(({ code }) => lined.includes(code));
  return at < 0 ? null : formatPath(path.slice(0, at + 1));
}

/** A hose, tube or injection line laid out straight, pump end at the left. */
export const lineRun: DiagramKind = {
  id: 'line-run',
  subjectOf: linePath,
  draw: (subject, locations, layout): Scene => {
    const mm = lengthMm(locations);
    const component = componentsAlong(locations[0]?.path ?? []).find(({ code }) => lined.includes(code));
    const parts = component?.parts ?? [];
    const part = (below: string, outline: readonly XY[]): DiagramPart => {
      const path = below === '' ? subject : `${subject}/${below}`;
      return { path, name: speakComponent(path, layout), outline };
    };
    const hasEnds = parts.some(({ code }) => code === 'END');
    return {
      title: speakComponent(subject, layout),
      notes: ['Laid out straight, not to scale.'],
      mirrored: false,
      numbered: false,
      width,
      height: 96,
      tagsOn: 'top',
      primitives: [
        open(run(0, 1, -half), 'edge'),
        open(run(0, 1, half), 'edge'),
        ...fitting(from, -1),
        ...fitting(to, 1),
        label(4, axisY + 42, 'pump end', 'start'),
        label(width - 4, axisY + 42, farEnd(subject), 'end'),
      ],
      parts: [
        part('', [...run(0, 1, -22), ...[...run(0, 1, 22)].reverse()]),
        ...(hasEnds
          ? [part('END.A', box(0, axisY - 22, from, axisY + 22)), part('END.B', box(to, axisY - 22, width, axisY + 22))]
          : []),
      ],
      anchorOf: (location) => anchorOf(location, mm),
    };
  },
};
