import type { XY } from '../../geometry/spaces.ts';
import type { Layout } from '../../model/layout.ts';
import { headOfCylinder } from '../../parts/engine-counts.ts';
import { faceClock } from '../../parts/face-clock.ts';
import { formatPath } from '../../parts/format-location.ts';
import type { Location, LocationPath } from '../../parts/location.ts';
import { resolveReference } from '../../parts/resolve-reference.ts';
import { speakComponent } from '../../parts/speak-component.ts';
import { type BoreFeature, featureOf, featuresOfBore } from '../bore-features.ts';
import { cylinderOfPlace, headOfPath, hourOfSide } from '../cylinder-of-place.ts';
import {
  type Anchor,
  box,
  circle,
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
import { type Bore, directionOfHour, type EnginePlan, enginePlan } from '../engine-plan.ts';
import type { DiagramKind } from '../kind.ts';

interface View {
  readonly plan: EnginePlan;
  readonly layout: Layout;
  readonly mirrored: boolean;
}

/** A point beside a bore's middle, in bore radii as looked down on; the mirror turns it over. */
function at({ plan, mirrored }: View, bore: Bore, offset: XY): XY {
  return {
    x: bore.centre.x + offset.x * plan.radius,
    y: bore.centre.y + (mirrored ? -1 : 1) * offset.y * plan.radius,
  };
}

function drawBolts({ plan }: View): Primitive[] {
  return plan.heads.flatMap(({ left, right, top, bottom }) => {
    const spaces = Math.max(1, Math.round((right - left) / plan.pitch));
    return Array.from({ length: spaces + 1 }, (_, index) => {
      const x = left + 9 + ((right - left - 18) * index) / spaces;
      return [circle({ x, y: top + 9 }, 3, 'hair'), circle({ x, y: bottom - 9 }, 3, 'hair')];
    }).flat();
  });
}

function drawBores(view: View): Primitive[] {
  const { plan, layout, mirrored } = view;
  return plan.bores.flatMap((bore) => {
    const features = mirrored
      ? featuresOfBore(layout).map(({ offset, radius }) => circle(at(view, bore, offset), radius * plan.radius, 'hair'))
      : [];
    const bottom = bore.centre.y + plan.radius + 18 + 15;
    return [
      circle(bore.centre, plan.radius, 'line'),
      ...(!mirrored && layout.engine.liner !== 'parent' && layout.engine.liner !== 'unknown'
        ? [circle(bore.centre, plan.radius * 0.86, 'hair')]
        : []),
      ...features,
      label(bore.centre.x, bottom, String(bore.number), 'middle', 'number'),
    ];
  });
}

function drawPlan(view: View): Primitive[] {
  const { plan, layout } = view;
  const bottom = plan.height + 14;
  const banks = plan.rowNames.flatMap((name, row) => {
    const bore = plan.bores.find((each) => each.row === row);
    return name === null || bore === undefined
      ? []
      : [label(plan.width - 2, bore.centre.y - plan.radius - 24, name, 'end')];
  });
  const crank =
    layout.engine.arrangement === 'opposed' && plan.rowNames.length > 1
      ? [
          open(
            [
              { x: 8, y: plan.crankY },
              { x: plan.width - 8, y: plan.crankY },
            ],
            'hair',
            true,
          ),
        ]
      : [];
  return [
    ...plan.heads.map(({ left, top, right, bottom: low }) => closed(box(left, top, right, low), 'edge')),
    ...drawBolts(view),
    ...drawBores(view),
    ...banks,
    ...crank,
    label(2, bottom, 'fan end', 'start'),
    label(plan.width - 2, bottom, 'flywheel', 'end'),
  ];
}

/** Looked down on, a bore is picked whole; from below, what stands in it. */
function partsOf(view: View): DiagramPart[] {
  const { plan, layout, mirrored } = view;
  return plan.bores.flatMap((bore) => {
    if (!mirrored) {
      const path = `ENG/${layout.engine.liner === 'wet' || layout.engine.liner === 'dry' ? 'LNR' : 'BLK/BORE'}.${bore.number}`;
      return [{ path, name: speakComponent(path, layout), outline: round(bore.centre, plan.radius) }];
    }
    const head = headOfCylinder(bore.number, layout) ?? 1;
    return featuresOfBore(layout).map((feature) => {
      const path = `ENG/HD.${head}/${feature.code}.${[bore.number, ...feature.within].join('.')}`;
      return {
        path,
        name: speakComponent(path, layout),
        outline: round(at(view, bore, feature.offset), Math.max(feature.radius * plan.radius, 8)),
      };
    });
  });
}

function boreOf(view: View, cylinder: number | null): Bore | null {
  return view.plan.bores.find(({ number }) => number === cylinder) ?? null;
}

/** A part that stands at a bore: its middle and how far it reaches, in drawing units. */
function spotOf(view: View, path: LocationPath): { readonly middle: XY; readonly radius: number } | null {
  const bore = boreOf(view, cylinderOfPlace({ path, qualifiers: {} }));
  const node = path.at(-1);
  if (bore === null || node === undefined) return null;
  const feature: BoreFeature | null = featureOf(node, view.layout);
  if (feature === null) return { middle: bore.centre, radius: view.plan.radius };
  return { middle: at(view, bore, feature.offset), radius: feature.radius * view.plan.radius };
}

/** Points on a circle for hours of the deck clock, clockwise from above. */
function hoursOn(view: View, middle: XY, radius: number, fromHour: number, toHour: number): XY[] {
  const span = (((toHour - fromHour) % 12) + 12) % 12;
  const steps = Math.max(1, Math.ceil(span * 2));
  return Array.from({ length: span === 0 ? 1 : steps + 1 }, (_, index) => {
    const way = directionOfHour(fromHour + (span * index) / steps, view.mirrored);
    return { x: middle.x + way.x * radius, y: middle.y + way.y * radius };
  });
}

/** From the edge of one spot to the edge of another. */
function lineBetween(a: { middle: XY; radius: number }, b: { middle: XY; radius: number }): Anchor {
  const away = Math.hypot(b.middle.x - a.middle.x, b.middle.y - a.middle.y);
  if (away <= a.radius + b.radius + 3) return lineAt(a.middle, b.middle);
  const along = (from: XY, to: XY, part: number) => ({
    x: from.x + ((to.x - from.x) * part) / away,
    y: from.y + ((to.y - from.y) * part) / away,
  });
  return lineAt(along(a.middle, b.middle, a.radius), along(b.middle, a.middle, b.radius));
}

function anchorOf(view: View, location: Location): Anchor | null {
  const { path, qualifiers } = location;
  const spot = (reference: LocationPath | undefined) => {
    const resolved = reference === undefined ? null : resolveReference(reference, path);
    return resolved === null ? null : spotOf(view, resolved);
  };
  const own = spotOf(view, path);
  const from = spot(qualifiers.from) ?? own;
  const to = spot(qualifiers.to);
  if (from !== null && to !== null && from !== to) return lineBetween(from, to);
  const { between, clock, side } = qualifiers;
  const ends = [spot(between?.[0]), spot(between?.[1])];
  if (ends[0] != null && ends[1] != null && clock === undefined) return lineBetween(ends[0], ends[1]);
  const bore = boreOf(view, cylinderOfPlace(location));
  const hour = hourOfSide(side, view.layout);
  const range = clock ?? (hour === null ? null : { fromHour: hour - 0.5, toHour: hour + 0.5 });
  // A place on the deck itself lies outside the bore, a place of a part on the part's own edge.
  const round = own ?? (bore === null ? null : { middle: bore.centre, radius: view.plan.radius + 7 });
  if (round !== null && range !== null) {
    const points = hoursOn(view, round.middle, round.radius, range.fromHour, range.toHour);
    const [only] = points;
    return points.length === 1 && only !== undefined ? pointAt(only.x, only.y) : lineAt(...points);
  }
  if (own !== null) return pointAt(own.middle.x, own.middle.y);
  if (bore !== null) return pointAt(bore.centre.x, bore.centre.y - view.plan.radius - 7);
  const head = headOfPath(path);
  const outline = view.plan.heads.find((each) => each.head === head) ?? view.plan.heads[0];
  return outline === undefined ? null : pointAt((outline.left + outline.right) / 2, outline.top);
}

/** The place's own clock is the example where it has one; else an hour at which the swap is plain. */
function mirrorNote(locations: readonly Location[]): string {
  const hour = locations.find(({ qualifiers }) => qualifiers.clock !== undefined)?.qualifiers.clock?.fromHour ?? 5;
  const spoken = (value: number) => (Number.isInteger(value) ? String(value) : `half past ${Math.floor(value) || 12}`);
  return `${spoken(faceClock(hour))} ${Number.isInteger(hour) ? "o'clock " : ''}here is ${spoken(hour)} on the deck.`;
}

function draw(mirrored: boolean, locations: readonly Location[], layout: Layout): Scene {
  const view: View = { plan: enginePlan(layout, mirrored), layout, mirrored };
  const banks = view.plan.banksUnknown ? ['Which bank a number stands in is not written down yet.'] : [];
  return {
    title: mirrored ? 'Cylinder head, fire face' : 'Cylinders, from above',
    notes: mirrored
      ? ['Seen from below: left and right swap.', mirrorNote(locations), ...banks]
      : ["Seen from above: twelve o'clock is the fan end.", ...banks],
    mirrored,
    numbered: true,
    width: view.plan.width,
    height: view.plan.height + 20,
    tagsOn: 'top',
    primitives: drawPlan(view),
    parts: partsOf(view),
    anchorOf: (location) => anchorOf(view, location),
  };
}

const notOnAFace = ['ROCK', 'CORE'];

/** The fire face of the heads, looked at from below. */
export const fireFace: DiagramKind = {
  id: 'fire-face',
  subjectOf: ({ path, qualifiers }) => {
    if (qualifiers.face === 'DECK' || path[0]?.code !== 'ENG') return null;
    const isHead = path[1]?.code === 'HD' && !notOnAFace.includes(path[2]?.code ?? '');
    return isHead || qualifiers.face === 'FIRE' ? 'fire' : null;
  },
  draw: (_subject, locations, layout) => draw(true, locations, layout),
};

const onTheDeck = ['BLK/DECK', 'BLK/BOLT', 'HG'];

/** The decks, looked down on. */
export const deckPlan: DiagramKind = {
  id: 'deck-plan',
  subjectOf: (location) => {
    const { path } = location;
    if (path[0]?.code !== 'ENG') return null;
    const codes = formatPath(path.slice(1).map(({ code }) => ({ code, indices: [] })));
    const isDeck = onTheDeck.some((part) => codes === part || codes.startsWith(`${part}/`));
    return isDeck || location.qualifiers.face === 'DECK' ? 'deck' : null;
  },
  draw: (_subject, locations, layout) => draw(false, locations, layout),
};
