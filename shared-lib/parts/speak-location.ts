import type { Layout } from '../model/layout.ts';
import type { ClockFrame, Component, DepthDatum } from './component.ts';
import { cylinderPlaces } from './cylinder-places.ts';
import { componentsAlong, findComponent } from './find-component.ts';
import { formatPath } from './format-location.ts';
import type { Location, LocationPath, Qualifiers, Side } from './location.ts';
import { parseLocation } from './parse-location.ts';
import { resolveReference } from './resolve-reference.ts';
import { speakClock } from './speak-clock.ts';
import { capitalise, spokenPath } from './speak-component.ts';
import { cylinderOf, endWords, speakNode } from './speak-node.ts';

export const sideWords: Record<Side, string> = {
  THR: 'thrust side',
  MIN: 'minor thrust side',
  FRONT: 'front side',
  REAR: 'rear side',
  INT: 'intake side',
  EXH: 'exhaust side',
  L: 'left side',
  R: 'right side',
  TOP: 'top side',
  BOT: 'bottom side',
  IN: 'inner side',
  OUT: 'outer side',
};

const zoneWords = {
  ABOVE: 'above ring travel',
  TRR: 'at top-ring reversal',
  UP: 'upper ring travel',
  MID: 'middle of the ring travel',
  LOW: 'lower ring travel',
  BELOW: 'below ring travel',
  SEAL: 'seal zone',
} as const;

const viewWords = {
  ABOVE: 'seen from above',
  BELOW: 'seen from below',
  FRONT: 'seen from the front',
  REAR: 'seen from the rear',
  L: 'seen from the left',
  R: 'seen from the right',
} as const;

const datumWords: Record<DepthDatum, string> = {
  deck: 'below the deck',
  flange: 'below the flange',
  crown: 'below the crown',
  'pump-end': 'from the pump end',
  'base-end': 'from the base end',
  'rod-eye': 'from the rod eye',
};

function inherited<Key extends 'clock' | 'datum'>(
  components: readonly Component[],
  key: Key,
): Component[Key] | undefined {
  return components.findLast((component) => component[key] !== undefined)?.[key];
}

/** The cylinder a path counts by, wherever it stands on it. */
function cylinderAlong(path: LocationPath): number | null {
  const components = componentsAlong(path);
  for (const [depth, node] of path.entries()) {
    const component = components[depth];
    const cylinder = component === undefined ? null : cylinderOf(node, component);
    if (cylinder !== null) return cylinder;
  }
  return null;
}

/** Whether the name ends in a number or begins with a side, so that no article stands before it. */
function isOneOfMany(spoken: string): boolean {
  return /\d$/.test(spoken);
}

interface Speaker {
  readonly location: Location;
  readonly layout: Layout;
  /** The cylinder already said, which references need not repeat. */
  readonly saidCylinder: number | null;
}

function speakReference(reference: LocationPath, speaker: Speaker, article: boolean): string {
  const path = resolveReference(reference, speaker.location.path) ?? reference;
  const component = findComponent(path);
  const node = path.at(-1);
  if (component === null || node === undefined) return 'another part';
  const name = speakNode(node, component, speaker.layout, component.asReference ?? component.name);
  const cylinder = component.ofCylinder === true ? cylinderOf(node, component) : null;
  const spoken = article && !isOneOfMany(name) ? `the ${name}` : name;
  return cylinder === null || cylinder === speaker.saidCylinder ? spoken : `${spoken} of cylinder ${cylinder}`;
}

/** A crack that starts at the part the place names need not say so again. */
function speakDirection(speaker: Speaker): string | null {
  const { from, to } = speaker.location.qualifiers;
  const start = from === undefined || isSelf(from, speaker.location.path) ? null : speakReference(from, speaker, true);
  const aim = to === undefined ? null : speakReference(to, speaker, true);
  if (start !== null && aim !== null) return `running from ${start} towards ${aim}`;
  if (aim !== null) return `running towards ${aim}`;
  if (start !== null) return `running from ${start}`;
  return from === undefined ? null : 'starting there';
}

function isSelf(reference: LocationPath, path: LocationPath): boolean {
  const resolved = resolveReference(reference, path);
  return resolved !== null && formatPath(resolved) === formatPath(path);
}

function speakNear(speaker: Speaker): string | null {
  const { near } = speaker.location.qualifiers;
  if (near === undefined) return null;
  const part = speakReference(near.part, speaker, true);
  return near.mm === null ? `near ${part}` : `${near.mm} mm from ${part}`;
}

function speakFace(speaker: Speaker): string | null {
  const { face } = speaker.location.qualifiers;
  if (face === undefined) return null;
  if (face === 'FIRE') return 'fire face';
  if (face === 'DECK') return 'deck face';
  const onLiner = componentsAlong(speaker.location.path).some((component) => component.code === 'LNR');
  if (!onLiner) return face === 'OUT' ? 'outside' : 'inside';
  if (face === 'IN') return 'bore surface';
  return speaker.layout.engine.liner === 'dry' ? 'outer surface' : 'coolant side';
}

function speakDepth(components: readonly Component[], qualifiers: Qualifiers): string | null {
  const { depth } = qualifiers;
  if (depth === undefined) return null;
  const range = depth.fromMm === depth.toMm ? `${depth.fromMm}` : `${depth.fromMm}–${depth.toMm}`;
  const datum = inherited(components, 'datum');
  return `${range} mm ${datum === undefined ? 'along' : datumWords[datum]}`;
}

function clockFrame(components: readonly Component[], qualifiers: Qualifiers): ClockFrame {
  if (qualifiers.face === 'FIRE') return 'fire';
  if (qualifiers.face === 'DECK') return 'deck';
  return inherited(components, 'clock') ?? 'up';
}

function speakQualifiers(speaker: Speaker): readonly string[] {
  const { path, qualifiers } = speaker.location;
  const components = componentsAlong(path);
  const { between, side, end, view, clock, zone } = qualifiers;
  return [
    speakFace(speaker),
    side === undefined ? null : sideWords[side],
    end === undefined || qualifiers.depth !== undefined ? null : `at the ${endWords[end]}`,
    between === undefined
      ? null
      : `between ${speakReference(between[0], speaker, false)} and ${speakReference(between[1], speaker, false)}`,
    speakDirection(speaker),
    speakNear(speaker),
    speakDepth(components, qualifiers),
    zone === undefined ? null : zoneWords[zone],
    clock === undefined ? null : speakClock(clock, clockFrame(components, qualifiers)),
    view === undefined ? null : viewWords[view],
  ].filter((piece) => piece !== null);
}

/** A place on a part that has no cylinder of its own takes the one its references name: `block deck at cylinder 2`. */
function cylinderOfReferences(location: Location): number | null {
  const { between, near, from, to } = location.qualifiers;
  const references = [...(between ?? []), ...(near === undefined ? [] : [near.part]), from, to];
  for (const reference of references) {
    const path = reference === undefined ? null : resolveReference(reference, location.path);
    const cylinder = path === null ? null : cylinderAlong(path);
    if (cylinder !== null) return cylinder;
  }
  return null;
}

const bankWords = { L: ', left bank', R: ', right bank', A: ', bank A', B: ', bank B' } as const;

function countedFrom(cylinder: number | null, layout: Layout): string {
  const { scheme } = layout.numbering;
  if (scheme === 'free-first') return ' (counted from the fan end)';
  if (scheme === 'drive-first') return ' (counted from the flywheel end)';
  const bank = cylinderPlaces(layout).find((place) => place.number === cylinder)?.bank ?? null;
  return ` (the maker's own number${bank === null ? '' : bankWords[bank]})`;
}

/**
 * A place as a mechanic says it.
 *
 * @param text  a place of the location grammar
 * @param options.long  says once which end cylinders are counted from
 * @throws AppError 'location-malformed'; 'location-unknown' where the tree has no such part
 * Source: the handbook's examples (2.3).
 * @example speakLocation('ENG/LNR.4@side=THR;face=OUT;z=90-160', layout) // 'Liner 4, coolant side, thrust side, 90–160 mm below the flange'
 */
export function speakLocation(text: string, layout: Layout, options: { readonly long?: boolean } = {}): string {
  const location = parseLocation(text);
  const path = spokenPath(location.path, layout);
  const own = path.cylinder ?? cylinderAlong(location.path);
  const borrowed = own === null ? cylinderOfReferences(location) : null;
  const scheme = options.long === true ? countedFrom(own ?? borrowed, layout) : '';
  const [first = '', ...rest] = path.parts;
  const opening =
    path.cylinder !== null
      ? [`cylinder ${path.cylinder}${scheme}`, first]
      : borrowed !== null
        ? [`${first} at cylinder ${borrowed}${scheme}`]
        : [path.numbered ? `${first}${scheme}` : first];
  const speaker = { location, layout, saidCylinder: own ?? borrowed };
  return capitalise([...opening, ...rest, ...speakQualifiers(speaker)].join(', '));
}
