import type { XY } from '../../geometry/spaces.ts';
import type { Layout } from '../../model/layout.ts';
import { cylinderNumbers, mainCount } from '../../parts/engine-counts.ts';
import type { Location } from '../../parts/location.ts';
import { speakComponent } from '../../parts/speak-component.ts';
import {
  type Anchor,
  box,
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
const axisY = 62;
const mainHalf = 13;
const pinHalf = 11;
const throwY = 24;
const left = 34;

/** Journals and pins alternate along the shaft, fan end first; each knows its number of the machine's scheme. */
interface Shaft {
  readonly mains: readonly { readonly number: number; readonly x: number }[];
  readonly pins: readonly { readonly number: number; readonly x: number; readonly y: number }[];
  readonly half: number;
}

function shaftOf(layout: Layout): Shaft {
  const mains = mainCount(layout);
  const { arrangement, cylinders } = layout.engine;
  const pinCount = mains - 1;
  const step = (width - 2 * left) / Math.max(1, mains - 1);
  const fromDrive = layout.numbering.scheme === 'drive-first';
  const inline = arrangement !== 'V';
  const numbers = inline
    ? cylinderNumbers(layout)
    : Array.from({ length: pinCount }, (_, index) => (fromDrive ? pinCount - index : index + 1));
  return {
    mains: Array.from({ length: mains }, (_, index) => ({
      number: fromDrive ? mains - index : index + 1,
      x: left + index * step,
    })),
    pins: numbers.slice(0, Math.max(pinCount, inline ? cylinders : 0)).map((number, index) => ({
      number,
      x: left + (index + 0.5) * step,
      y: axisY + (index % 2 === 0 ? -throwY : throwY),
    })),
    half: Math.min(11, step * 0.18),
  };
}

function drawShaft({ mains, pins, half }: Shaft): Primitive[] {
  const crowded = mains.length > 13;
  return [
    open(
      [
        { x: 8, y: axisY },
        { x: width - 8, y: axisY },
      ],
      'hair',
      true,
    ),
    closed(box(10, axisY - 7, left - half, axisY + 7), 'line'),
    closed(box(width - left + half, axisY - 10, width - 18, axisY + 10), 'line'),
    closed(box(width - 18, axisY - 24, width - 8, axisY + 24), 'edge'),
    ...mains.flatMap(({ number, x }) => [
      closed(box(x - half, axisY - mainHalf, x + half, axisY + mainHalf), 'edge'),
      ...(crowded ? [] : [label(x, axisY + 62, String(number), 'middle', 'number')]),
    ]),
    ...pins.flatMap(({ number, x, y }) => {
      const web = half + 3;
      const low = Math.min(y - pinHalf, axisY - mainHalf);
      const high = Math.max(y + pinHalf, axisY + mainHalf);
      return [
        closed(box(x - half, y - pinHalf, x + half, y + pinHalf), 'line'),
        closed(box(x - web - 4, low - 3, x - web + 1, high + 3), 'hair'),
        closed(box(x + web - 1, low - 3, x + web + 4, high + 3), 'hair'),
        ...(crowded ? [] : [label(x, axisY + 62, String(number), 'middle', 'word')]),
      ];
    }),
    label(2, axisY + 80, 'fan end', 'start'),
    label(width - 2, axisY + 80, 'flywheel', 'end'),
  ];
}

function partsOf({ mains, pins, half }: Shaft, layout: Layout): DiagramPart[] {
  const part = (path: string, outline: readonly XY[]): DiagramPart => ({
    path,
    name: speakComponent(path, layout),
    outline,
  });
  return [
    ...mains.map(({ number, x }) =>
      part(`ENG/CRK/MJ.${number}`, box(x - half - 2, axisY - 30, x + half + 2, axisY + 30)),
    ),
    ...pins.map(({ number, x, y }) => part(`ENG/CRK/CP.${number}`, box(x - half - 4, y - 18, x + half + 4, y + 18))),
    part('ENG/CRK/NOSE', box(6, axisY - 14, left - half - 2, axisY + 14)),
    part('ENG/CRK/FLANGE', box(width - left + half + 2, axisY - 26, width - 4, axisY + 26)),
  ];
}

const ofMains = ['MJ', 'MBRG', 'MAIN', 'CAM'];

function anchorOf({ mains, pins, half }: Shaft, { path }: Location): Anchor {
  const node = path[2] ?? path[1];
  const code = node?.code ?? '';
  const [number, shell] = node?.indices ?? [];
  if (ofMains.includes(code)) {
    const main = mains.find((each) => each.number === number);
    if (main === undefined) return lineAt(...mains.map(({ x }) => ({ x, y: axisY + mainHalf })));
    const across = (y: number) => lineAt({ x: main.x - half, y }, { x: main.x + half, y });
    if (path[3]?.code === 'FIL') return pointAt(main.x + half, axisY - mainHalf);
    if (shell === 'U') return across(axisY - mainHalf);
    if (shell === 'LO') return across(axisY + mainHalf);
    return { ...across(axisY - mainHalf), strokes: [-mainHalf, mainHalf].flatMap((y) => across(axisY + y).strokes) };
  }
  if (code === 'CP') {
    const pin = pins.find((each) => each.number === number);
    if (pin === undefined) return lineAt(...pins.map(({ x, y }) => ({ x, y })));
    if (path[3]?.code === 'FIL') return pointAt(pin.x + half, pin.y - pinHalf);
    const across = (y: number) => [
      { x: pin.x - half, y },
      { x: pin.x + half, y },
    ];
    return { point: { x: pin.x, y: pin.y - pinHalf }, strokes: [across(pin.y - pinHalf), across(pin.y + pinHalf)] };
  }
  switch (code) {
    case 'NOSE':
    case 'DAMP':
      return pointAt(18, axisY - 7);
    case 'SEALF':
      return pointAt(left - half - 5, axisY - 7);
    case 'SEALR':
      return pointAt(width - left + half + 3, axisY - 10);
    case 'FLANGE':
      return pointAt(width - 13, axisY - 24);
    case 'THRW':
      return pointAt((mains.at(-1)?.x ?? 0) - half, axisY - mainHalf);
    default:
      return pointAt(width / 2, axisY);
  }
}

const alongShaft = ['MAIN', 'CAM'];

/** The crankshaft from the side, with its journals, pins and bearings. */
export const crankshaft: DiagramKind = {
  id: 'crankshaft',
  subjectOf: ({ path }) => {
    const [system, assembly, part] = path.map(({ code }) => code);
    if (system !== 'ENG') return null;
    return assembly === 'CRK' || (assembly === 'BLK' && alongShaft.includes(part ?? '')) ? 'crank' : null;
  },
  draw: (_subject, _locations, layout): Scene => {
    const shaft = shaftOf(layout);
    return {
      title: 'Crankshaft, from the side',
      notes: ['Bold numbers are main bearings; the others are crankpins.'],
      mirrored: false,
      numbered: true,
      width,
      height: axisY + 88,
      tagsOn: 'top',
      primitives: drawShaft(shaft),
      parts: partsOf(shaft, layout),
      anchorOf: (location) => anchorOf(shaft, location),
    };
  },
};
