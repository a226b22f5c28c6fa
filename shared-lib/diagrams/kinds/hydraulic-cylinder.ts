import type { XY } from '../../geometry/spaces.ts';
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
  round,
  type Scene,
} from '../drawing.ts';
import type { DiagramKind } from '../kind.ts';

const width = 308;
const axisY = 46;
const base: XY = { x: 18, y: axisY };
const rodEye: XY = { x: width - 18, y: axisY };
const eye = 12;
const barrel = { left: 34, right: 196, top: axisY - 24, bottom: axisY + 24 };
const piston = { left: 112, right: 130 };
const gland = { left: 182, right: 204 };
const rodHalf = 8;

const lines: readonly Primitive[] = [
  ...[base, rodEye].flatMap((centre) => [circle(centre, eye, 'line'), circle(centre, 5, 'line')]),
  closed(box(barrel.left, barrel.top, barrel.right, barrel.bottom), 'edge'),
  open(
    [
      { x: base.x + eye, y: axisY },
      { x: barrel.left, y: axisY },
    ],
    'edge',
  ),
  closed(box(piston.left, barrel.top + 3, piston.right, barrel.bottom - 3), 'line'),
  open(
    [
      { x: piston.left + 9, y: barrel.top + 3 },
      { x: piston.left + 9, y: barrel.bottom - 3 },
    ],
    'hair',
  ),
  closed(box(gland.left, barrel.top - 4, gland.right, barrel.bottom + 4), 'line'),
  ...[-rodHalf, rodHalf].map((offset) =>
    open(
      [
        { x: piston.right, y: axisY + offset },
        { x: rodEye.x - eye, y: axisY + offset },
      ],
      'line',
    ),
  ),
  closed(box(44, barrel.bottom, 54, barrel.bottom + 9), 'line'),
  closed(box(166, barrel.bottom, 176, barrel.bottom + 9), 'line'),
  label(4, axisY + 58, 'base end', 'start'),
  label(width - 4, axisY + 58, 'rod end', 'end'),
];

/** A stroke in millimetres is nobody's to know: long enough for what is written. */
function spanMm(locations: readonly Location[]): number {
  return Math.max(600, ...locations.map(({ qualifiers }) => (qualifiers.depth?.toMm ?? 0) * 1.25));
}

function along(location: Location, mm: number): Anchor | null {
  const { depth, clock } = location.qualifiers;
  if (depth === undefined) return null;
  const below = clock !== undefined && clock.fromHour > 3 && clock.fromHour < 9;
  const onRod = location.path.at(-1)?.code === 'RODH';
  const [from, to] = onRod ? [rodEye.x - eye, gland.right] : [barrel.left, gland.left];
  const y = onRod ? axisY + (below ? rodHalf : -rodHalf) : below ? barrel.bottom : barrel.top;
  const x = (value: number) => from + (to - from) * clamp(value / mm, 0, 1);
  return depth.fromMm === depth.toMm
    ? pointAt(x(depth.fromMm), y)
    : lineAt({ x: x(depth.fromMm), y }, { x: x(depth.toMm), y });
}

function anchorOf(location: Location, mm: number): Anchor {
  const measured = along(location, mm);
  if (measured !== null) return measured;
  const node = location.path.at(-1);
  const atRod = node?.indices[0] === 'r';
  switch (node?.code) {
    case 'GL':
      return pointAt((gland.left + gland.right) / 2, barrel.top - 4);
    case 'RSEAL':
      return pointAt(gland.left + 8, axisY - rodHalf);
    case 'WIPER':
      return pointAt(gland.right, axisY - rodHalf);
    case 'RODH':
      return lineAt({ x: gland.right + 6, y: axisY - rodHalf }, { x: rodEye.x - eye - 4, y: axisY - rodHalf });
    case 'PIS':
      return pointAt((piston.left + piston.right) / 2, barrel.top + 3);
    case 'EYE':
      return pointAt(atRod ? rodEye.x : base.x, axisY - eye);
    case 'PINC':
      return pointAt(atRod ? rodEye.x : base.x, axisY);
    case 'PORT':
      return pointAt(atRod ? 171 : 49, barrel.bottom + 9);
    default:
      return pointAt(84, barrel.top);
  }
}

function cylinderPath({ path }: Location): string | null {
  const at = path.findIndex(({ code }) => code === 'CYL');
  return at < 0 ? null : formatPath(path.slice(0, at + 1));
}

/** A hydraulic cylinder in section, base end at the left. */
export const hydraulicCylinder: DiagramKind = {
  id: 'hydraulic-cylinder',
  subjectOf: cylinderPath,
  draw: (subject, locations, layout): Scene => {
    const mm = spanMm(locations);
    const part = (below: string, outline: readonly XY[]): DiagramPart => {
      const path = below === '' ? subject : `${subject}/${below}`;
      return { path, name: speakComponent(path, layout), outline };
    };
    return {
      title: speakComponent(subject, layout),
      notes: ['In section, not to scale.'],
      mirrored: false,
      numbered: false,
      width,
      height: axisY + 66,
      tagsOn: 'top',
      primitives: lines,
      parts: [
        part('BAR', box(barrel.left, barrel.top, piston.left - 2, barrel.bottom)),
        part('PIS', box(piston.left - 2, barrel.top, piston.right + 2, barrel.bottom)),
        part('BAR', box(piston.right + 2, barrel.top, gland.left, barrel.bottom)),
        part('GL', box(gland.left, barrel.top - 6, gland.right + 2, barrel.bottom + 6)),
        part('RODH', box(gland.right + 2, axisY - 16, rodEye.x - eye, axisY + 16)),
        part('EYE.b', round(base, eye + 2)),
        part('EYE.r', round(rodEye, eye + 2)),
      ],
      anchorOf: (location) => anchorOf(location, mm),
    };
  },
};
