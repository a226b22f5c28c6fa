import type { XY } from '../../geometry/spaces.ts';
import { formatPath } from '../../parts/format-location.ts';
import type { Location } from '../../parts/location.ts';
import { speakComponent } from '../../parts/speak-component.ts';
import {
  type Anchor,
  arc,
  circle,
  closed,
  label,
  lineAt,
  open,
  type Primitive,
  pointAt,
  type Scene,
} from '../drawing.ts';
import type { DiagramKind } from '../kind.ts';

const width = 196;
const footY = 176;
const baseY = 208;

interface Pins {
  readonly number: number;
  readonly centre: XY;
}

function pinsFor(locations: readonly Location[]): readonly Pins[] {
  const named = locations.flatMap(({ qualifiers }) => {
    const { near, from, to, between } = qualifiers;
    const references = [near?.part, from, to, ...(between ?? [])];
    return references.flatMap(
      (path) => path?.filter(({ code }) => code === 'PIN').flatMap(({ indices }) => indices[0] ?? []) ?? [],
    );
  });
  const numbers = named.filter((index) => typeof index === 'number');
  const most = Math.max(2, ...numbers.map((number) => Math.min(number, 5)));
  return Array.from({ length: most }, (_, index) => ({
    number: index + 1,
    centre: { x: 74 + index * 3, y: 34 + (index * (footY - 70)) / Math.max(1, most - 1) },
  }));
}

function lines(pins: readonly Pins[]): Primitive[] {
  const outline = [
    { x: 22, y: footY },
    { x: 46, y: 26 },
    ...arc({ x: 62, y: 24 }, 16, Math.PI, 1.5 * Math.PI),
    ...arc({ x: 92, y: 24 }, 16, 1.5 * Math.PI, 2 * Math.PI),
    { x: 124, y: footY },
    { x: 124, y: baseY },
    { x: 22, y: baseY },
  ];
  return [
    closed(outline, 'line'),
    open(
      [
        { x: 22, y: footY },
        { x: 124, y: footY },
      ],
      'line',
      true,
    ),
    open(
      [
        { x: 0, y: baseY },
        { x: 156, y: baseY },
      ],
      'edge',
    ),
    open(
      [
        { x: 128, y: footY },
        { x: 140, y: footY },
      ],
      'hair',
    ),
    label(144, footY + 4, 'foot weld', 'start'),
    ...pins.flatMap(({ number, centre }) => [
      circle(centre, 9, 'line'),
      circle(centre, 3.5, 'line'),
      open(
        [
          { x: centre.x + 11, y: centre.y },
          { x: 140, y: centre.y },
        ],
        'hair',
      ),
      label(144, centre.y + 4, `pin ${number}`, 'start'),
    ]),
  ];
}

/** Which way from a pin is not said: the stroke stands below it, where the plate carries on to the foot. */
function anchorOf({ qualifiers }: Location, pins: readonly Pins[]): Anchor {
  const { near, from, to, between } = qualifiers;
  const pinOf = (path: Location['path'] | undefined) => {
    const number = path?.find(({ code }) => code === 'PIN')?.indices[0];
    return pins.find((pin) => pin.number === number)?.centre ?? null;
  };
  const first = pinOf(between?.[0] ?? from);
  const second = pinOf(between?.[1] ?? to);
  if (first !== null && second !== null) return lineAt(first, second);
  const pin = pinOf(near?.part) ?? first ?? second;
  if (pin === null) return pointAt(73, (footY + baseY) / 2);
  const away = near?.mm === null || near?.mm === undefined ? 16 : 14 + Math.min(near.mm, 100) * 0.2;
  const y = Math.min(pin.y + away, footY);
  return lineAt({ x: pin.x - 16, y: y - 1.5 }, { x: pin.x + 16, y: y + 1.5 });
}

/** A loader tower seen from its own side of the machine. */
export const loaderTower: DiagramKind = {
  id: 'loader-tower',
  subjectOf: ({ path }) =>
    path[0]?.code === 'FRM' && path[1]?.code === 'LOADERTWR' ? formatPath(path.slice(0, 2)) : null,
  draw: (subject, locations, layout): Scene => {
    const pins = pinsFor(locations);
    const isLeft = subject.endsWith('.L');
    const seen = subject.endsWith('.R') ? 'right' : isLeft ? 'left' : null;
    return {
      title: speakComponent(subject, layout),
      notes: [
        seen === null
          ? 'A sketch, not to scale.'
          : `Seen from the ${seen}, front to the ${seen}. A sketch, not to scale.`,
      ],
      mirrored: false,
      numbered: false,
      width,
      height: baseY + 8,
      tagsOn: 'right',
      primitives: lines(pins),
      parts: [
        {
          path: subject,
          name: speakComponent(subject, layout),
          outline: [
            { x: 22, y: baseY },
            { x: 46, y: 8 },
            { x: 108, y: 8 },
            { x: 124, y: baseY },
          ],
        },
      ],
      anchorOf: (location) => anchorOf(location, pins),
    };
  },
};
