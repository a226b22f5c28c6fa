import type { XY } from '../../geometry/spaces.ts';
import type { Layout } from '../../model/layout.ts';
import { formatPath } from '../../parts/format-location.ts';
import type { Location, Zone } from '../../parts/location.ts';
import { speakComponent } from '../../parts/speak-component.ts';
import { thrustSide } from '../../parts/thrust-side.ts';
import { cylinderOfPlace, hourOfSide } from '../cylinder-of-place.ts';
import {
  type Anchor,
  arc,
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
import { parseTypedMm } from '../typed-mm.ts';

/** A section across the engine, looking from the flywheel towards the fan: the engine's left is left. */
const middle = 100;
const halfBore = 50;
const wall = 11;
const deckY = 26;
const wallLength = 176;
const crownY = 84;
const pistonHeight = 70;
const pinY = crownY + 44;
const crankpin: XY = { x: middle, y: 252 };
const crankpinRadius = 15;
const ringYs = [10, 17, 24, 31, 38].map((below) => crownY + below);
const sides = [-1, 1] as const;

const zoneParts: Readonly<Record<Zone, number>> = {
  ABOVE: 0.05,
  TRR: 0.13,
  UP: 0.25,
  MID: 0.48,
  LOW: 0.72,
  BELOW: 0.86,
  SEAL: 0.92,
};

const walls = ['LNR', 'BORE', 'CBORE', 'LWR', 'WJ', 'FRING'];
const inside = ['PST', 'RING', 'PIN', 'CLIP', 'JET', 'ROD'];

/** The wall's length in millimetres is nobody's to know: long enough for what is written, and for the bore's size. */
function wallLengthMm(locations: readonly Location[], layout: Layout): number {
  const deepest = Math.max(0, ...locations.map(({ qualifiers }) => qualifiers.depth?.toMm ?? 0));
  return Math.max(deepest * 1.15, (parseTypedMm(layout.engine.bore) ?? 100) * 1.9);
}

function drawWalls(layout: Layout): Primitive[] {
  const lined = layout.engine.liner === 'wet' || layout.engine.liner === 'dry';
  const bottom = deckY + wallLength;
  return sides.flatMap((side) => {
    const inner = middle + side * halfBore;
    const outer = inner + side * wall;
    const jacket = outer + side * 24;
    return [
      open(
        [
          { x: inner, y: deckY },
          { x: inner, y: bottom },
        ],
        'edge',
      ),
      ...(lined
        ? [
            open(
              [
                { x: outer, y: deckY + 8 },
                { x: outer, y: bottom },
                { x: inner, y: bottom },
              ],
              'edge',
            ),
            open(
              [
                { x: inner, y: deckY },
                { x: outer + side * 6, y: deckY },
                { x: outer + side * 6, y: deckY + 8 },
                { x: outer, y: deckY + 8 },
              ],
              'edge',
            ),
          ]
        : []),
      // The jacket's far wall, and what closes it at the bottom.
      open(
        [
          { x: outer + side * 6, y: deckY },
          { x: jacket, y: deckY },
          { x: jacket, y: bottom - 16 },
          { x: lined ? outer + side * 3 : inner, y: bottom - 16 },
        ],
        'hair',
      ),
      ...(layout.engine.liner === 'wet'
        ? [0, 8].map((up) =>
            closed(
              box(
                Math.min(outer, outer + side * 4),
                bottom - 13 + up - 1,
                Math.max(outer, outer + side * 4),
                bottom - 13 + up + 3,
              ),
              'hair',
            ),
          )
        : []),
    ];
  });
}

function drawPiston(): Primitive[] {
  const left = middle - halfBore + 2;
  const right = middle + halfBore - 2;
  return [
    closed(
      [
        { x: left, y: crownY },
        { x: middle - 20, y: crownY },
        ...arc({ x: middle, y: crownY }, 16, Math.PI, 0),
        { x: middle + 20, y: crownY },
        { x: right, y: crownY },
        { x: right, y: crownY + pistonHeight },
        { x: right - 12, y: crownY + pistonHeight },
        { x: right - 12, y: crownY + pistonHeight - 10 },
        { x: left + 12, y: crownY + pistonHeight - 10 },
        { x: left + 12, y: crownY + pistonHeight },
        { x: left, y: crownY + pistonHeight },
      ],
      'line',
    ),
    ...ringYs.slice(0, 3).flatMap((y) =>
      sides.map((side) =>
        open(
          [
            { x: middle + side * (halfBore - 10), y },
            { x: middle + side * halfBore, y },
          ],
          'line',
        ),
      ),
    ),
    circle({ x: middle, y: pinY }, 9, 'line'),
  ];
}

function drawRod(): Primitive[] {
  return [
    ...sides.map((side) =>
      open(
        [
          { x: middle + side * 8, y: pinY + 10 },
          { x: middle + side * 11, y: crankpin.y - 22 },
        ],
        'line',
      ),
    ),
    circle(crankpin, crankpinRadius, 'line'),
    circle(crankpin, crankpinRadius + 8, 'line'),
    open(
      [
        { x: middle - 27, y: crankpin.y },
        { x: middle + 27, y: crankpin.y },
      ],
      'hair',
    ),
    // The jet, with where it aims.
    closed(box(middle - 47, 212, middle - 33, 220), 'line'),
    open(
      [
        { x: middle - 40, y: 212 },
        { x: middle - 28, y: crownY + pistonHeight - 6 },
      ],
      'hair',
      true,
    ),
  ];
}

function drawWords(layout: Layout): Primitive[] {
  const thrust = thrustSide(layout.engine.rotation) === 'right' ? 1 : -1;
  return [
    open(
      [
        { x: middle - 92, y: deckY },
        { x: middle - halfBore - wall - 6, y: deckY },
      ],
      'hair',
    ),
    open(
      [
        { x: middle + halfBore + wall + 6, y: deckY },
        { x: middle + 92, y: deckY },
      ],
      'hair',
    ),
    label(middle - 92, deckY - 8, 'left', 'start'),
    label(middle + 92, deckY - 8, 'right', 'end'),
    label(middle, deckY - 8, 'deck'),
    label(middle + thrust * 92, 236, 'thrust side', thrust > 0 ? 'end' : 'start'),
  ];
}

function partsOf(cylinder: string, layout: Layout): DiagramPart[] {
  const lined = layout.engine.liner === 'wet' || layout.engine.liner === 'dry';
  const wallPath = lined ? `ENG/LNR.${cylinder}` : `ENG/BLK/BORE.${cylinder}`;
  const part = (path: string, outline: readonly XY[]): DiagramPart => ({
    path,
    name: speakComponent(path, layout),
    outline,
  });
  const bottom = deckY + wallLength;
  return [
    part(wallPath, box(middle + halfBore, deckY, middle + halfBore + wall + 20, bottom)),
    part(wallPath, box(middle - halfBore - wall - 20, deckY, middle - halfBore, bottom)),
    part(`ENG/PST.${cylinder}/CRN`, box(middle - halfBore, crownY - 22, middle + halfBore, crownY + 7)),
    part(`ENG/RING.${cylinder}`, box(middle - halfBore, crownY + 7, middle + halfBore, crownY + 30)),
    part(`ENG/PST.${cylinder}/SKT`, box(middle - halfBore, crownY + 30, middle - 12, crownY + pistonHeight)),
    part(`ENG/PST.${cylinder}/SKT`, box(middle + 12, crownY + 30, middle + halfBore, crownY + pistonHeight)),
    part(`ENG/PIN.${cylinder}`, box(middle - 12, crownY + 30, middle + 12, crownY + pistonHeight)),
    part(`ENG/JET.${cylinder}`, box(middle - 50, 200, middle - 28, 224)),
    part(`ENG/ROD.${cylinder}/BEAM`, box(middle - 20, crownY + pistonHeight, middle + 20, crankpin.y - 24)),
    part(`ENG/ROD.${cylinder}/RBRG`, round(crankpin, crankpinRadius + 10)),
  ];
}

/** The side of the section that a place is on: minus for left, plus for right, null for before, behind or all round. */
function sideOf(location: Location, layout: Layout): -1 | 1 | null {
  const { side, clock } = location.qualifiers;
  const hour = clock === undefined ? hourOfSide(side, layout) : clock.fromHour;
  if (hour === null || hour === 12 || hour === 6) return null;
  return hour < 6 ? 1 : -1;
}

function anchorOnWall(location: Location, layout: Layout, lengthMm: number): Anchor {
  const { depth, zone, face } = location.qualifiers;
  const codes = location.path.map(({ code }) => code);
  const isOutside = face === 'OUT' || codes.some((code) => ['OUT', 'SEAL', 'WJ', 'LWR'].includes(code));
  const yOf = (mm: number) => deckY + clamp(mm / lengthMm, 0, 1) * wallLength;
  const isTop = codes.some((code) => ['FLG', 'CBORE', 'FRING'].includes(code));
  const isBottom = codes.some((code) => ['SEAL', 'LWR'].includes(code));
  const part = isTop ? 0.02 : isBottom ? zoneParts.SEAL : zone === undefined ? null : zoneParts[zone];
  const [top, bottom] =
    depth !== undefined
      ? [yOf(depth.fromMm), yOf(depth.toMm)]
      : part === null
        ? [deckY + 6, deckY + wallLength - 6]
        : [deckY + part * wallLength - 4, deckY + part * wallLength + 4];
  const along = (side: -1 | 1) => {
    const x = middle + side * (halfBore + (isOutside ? wall : 0));
    return [
      { x, y: top },
      { x, y: Math.max(bottom, top + 1) },
    ];
  };
  const side = sideOf(location, layout);
  const shown = side ?? (thrustSide(layout.engine.rotation) === 'right' ? 1 : -1);
  const anchor = lineAt(...along(shown));
  return side === null ? { ...anchor, strokes: [along(-1), along(1)] } : anchor;
}

function anchorInside(location: Location, layout: Layout): Anchor {
  const { path, qualifiers } = location;
  const code = path[1]?.code;
  const part = path[2] ?? path[1];
  const which = path[2]?.indices[0] ?? path[1]?.indices[1];
  const side = sideOf(location, layout) ?? 1;
  if (code === 'RING' || part?.code === 'RG' || part?.code === 'TLAND') {
    const y =
      part?.code === 'TLAND'
        ? crownY + 5
        : (ringYs[(typeof which === 'number' ? which : 1) - 1] ?? ringYs[4] ?? crownY);
    return lineAt({ x: middle + side * (halfBore - 10), y }, { x: middle + side * halfBore, y });
  }
  const skirtX = middle + side * (halfBore - 2);
  switch (part?.code) {
    case 'CRN':
      return lineAt({ x: middle + 22, y: crownY }, { x: middle + halfBore - 3, y: crownY });
    case 'BOWL':
      return pointAt(middle, crownY - 15);
    case 'SKT':
      return lineAt({ x: skirtX, y: crownY + 32 }, { x: skirtX, y: crownY + pistonHeight });
    case 'PINB':
      return pointAt(middle + 14, pinY);
    case 'CLIP':
      return pointAt(middle + 9, pinY);
    case 'PIN':
    case 'SMALL':
      return pointAt(middle, pinY);
    case 'JET':
      return pointAt(middle - 40, 216);
    case 'BEAM':
    case 'ROD':
      return pointAt(middle + 9, 190);
    case 'CAP':
      return pointAt(middle, crankpin.y + 22);
    case 'RBOLT':
      return pointAt(middle + 25, crankpin.y);
    case 'RBRG': {
      const upper = which === 'U';
      const lower = which === 'LO';
      const from = lower ? 0 : Math.PI;
      return upper || lower
        ? lineAt(...arc(crankpin, crankpinRadius + 4, from, from + Math.PI))
        : pointAt(crankpin.x + crankpinRadius + 4, crankpin.y);
    }
    case 'BIG':
      return pointAt(crankpin.x + crankpinRadius + 8, crankpin.y);
    case 'PST': {
      const depth = qualifiers.depth?.fromMm;
      return pointAt(
        middle + side * (halfBore - 2),
        crownY + clamp(depth === undefined ? 0.5 : depth / 120, 0, 1) * pistonHeight,
      );
    }
    default:
      return pointAt(middle, crownY + pistonHeight / 2);
  }
}

/** A section through one cylinder: wall, piston, rod and jet. Places of several cylinders stand on the plan instead. */
export const cylinderSection: DiagramKind = {
  id: 'cylinder-section',
  subjectOf: (location) => {
    const { path } = location;
    const codes = path.map(({ code }) => code);
    const shows = codes[0] === 'ENG' && (inside.includes(codes[1] ?? '') || codes.some((code) => walls.includes(code)));
    const cylinder = shows ? cylinderOfPlace(location) : null;
    return cylinder === null || codes[1] === 'HD' ? null : String(cylinder);
  },
  draw: (cylinder, locations, layout): Scene => {
    const lengthMm = wallLengthMm(locations, layout);
    return {
      title: `Cylinder ${cylinder}, section`,
      notes: ['Seen from the flywheel end. Not to scale.'],
      mirrored: false,
      numbered: true,
      width: 200,
      height: 286,
      tagsOn: 'right',
      primitives: [...drawWalls(layout), ...drawPiston(), ...drawRod(), ...drawWords(layout)],
      parts: partsOf(cylinder, layout),
      anchorOf: (location) =>
        inside.includes(location.path[1]?.code ?? '') || formatPath(location.path).startsWith('ENG/PST')
          ? anchorInside(location, layout)
          : anchorOnWall(location, layout, lengthMm),
    };
  },
};
