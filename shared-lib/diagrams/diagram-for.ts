import type { XY } from '../geometry/spaces.ts';
import type { Tag } from '../geometry/tag-plate.ts';
import type { Layout } from '../model/layout.ts';
import type { Location } from '../parts/location.ts';
import { parseLocation } from '../parts/parse-location.ts';
import type { Anchor, DiagramPart, Primitive, Scene } from './drawing.ts';
import { type HungTag, hangTags } from './hang-tags.ts';
import { diagramKinds } from './index.ts';
import type { DiagramKind } from './kind.ts';
import { cylinderSection } from './kinds/cylinder-section.ts';
import { deckPlan } from './kinds/deck-and-fire-face.ts';

/** What is to be shown: a finding's tag and the places it names. */
export interface PlacedFinding {
  readonly findingId: string;
  readonly tag: Tag;
  readonly locations: readonly string[];
}

export interface PlacedAnchor extends Anchor {
  readonly findingId: string;
  readonly location: string;
}

/** A line drawing of a part of the machine, ready to be drawn: everything lies within width and height. */
export interface Diagram {
  readonly kind: string;
  /** Stays the same for the same subject: which drawing of its kind it is. */
  readonly subject: string;
  readonly title: string;
  readonly notes: readonly string[];
  readonly mirrored: boolean;
  readonly numbered: boolean;
  readonly width: number;
  readonly height: number;
  readonly primitives: readonly Primitive[];
  readonly parts: readonly DiagramPart[];
  readonly anchors: readonly PlacedAnchor[];
  readonly tags: readonly HungTag[];
}

interface Place {
  readonly finding: PlacedFinding;
  readonly text: string;
  readonly location: Location;
}

interface Group {
  readonly kind: DiagramKind;
  readonly subject: string;
  readonly places: Place[];
}

const edge = 4;

function groupsOf(places: readonly Place[], layout: Layout): Group[] {
  const groups = new Map<string, Group>();
  const put = (kind: DiagramKind, subject: string, place: Place) => {
    const key = `${kind.id} ${subject}`;
    const group = groups.get(key) ?? { kind, subject, places: [] };
    group.places.push(place);
    groups.set(key, group);
  };
  // One finding on several cylinders: a section shows one of them, the plan all.
  const sections = new Map<string, Set<string>>();
  for (const { finding, location } of places) {
    const subject = cylinderSection.subjectOf(location, layout);
    if (subject === null) continue;
    sections.set(finding.findingId, (sections.get(finding.findingId) ?? new Set()).add(subject));
  }
  for (const place of places) {
    const kind = diagramKinds.find((each) => each.subjectOf(place.location, layout) !== null);
    const subject = kind?.subjectOf(place.location, layout) ?? null;
    if (kind === undefined || subject === null) continue;
    const onSeveral = kind === cylinderSection && (sections.get(place.finding.findingId)?.size ?? 0) > 1;
    if (onSeveral) put(deckPlan, 'deck', place);
    else put(kind, subject, place);
  }
  return [...groups.values()];
}

function shift({ x, y }: XY, by: XY): XY {
  return { x: x + by.x, y: y + by.y };
}

function shiftPrimitive(primitive: Primitive, by: XY): Primitive {
  switch (primitive.kind) {
    case 'circle':
      return { ...primitive, centre: shift(primitive.centre, by) };
    case 'path':
      return { ...primitive, points: primitive.points.map((point) => shift(point, by)) };
    case 'label':
      return { ...primitive, at: shift(primitive.at, by) };
  }
}

function compose({ kind, subject, places }: Group, layout: Layout): Diagram {
  const scene: Scene = kind.draw(
    subject,
    places.map(({ location }) => location),
    layout,
  );
  const found = places.flatMap(({ finding, text, location }) => {
    const anchor = scene.anchorOf(location);
    return anchor === null ? [] : [{ finding, text, anchor }];
  });
  const findings = [...new Map(found.map(({ finding }) => [finding.findingId, finding])).values()];
  const hung = hangTags(
    findings.map(({ findingId, tag }) => ({
      findingId,
      tag,
      points: found.filter(({ finding }) => finding.findingId === findingId).map(({ anchor }) => anchor.point),
    })),
    scene.tagsOn,
    scene,
  );
  const onTop = scene.tagsOn === 'top';
  const by = { x: edge, y: edge + (onTop ? hung.margin : 0) };
  const lowest = Math.max(scene.height, ...hung.tags.map(({ at, height }) => at.y + height));
  return {
    kind: kind.id,
    subject,
    title: scene.title,
    notes: scene.notes,
    mirrored: scene.mirrored,
    numbered: scene.numbered,
    width: scene.width + 2 * edge + (onTop ? 0 : hung.margin),
    height: lowest + 2 * edge + (onTop ? hung.margin : 0),
    primitives: scene.primitives.map((primitive) => shiftPrimitive(primitive, by)),
    parts: scene.parts.map((part) => ({ ...part, outline: part.outline.map((point) => shift(point, by)) })),
    anchors: found.map(({ finding, text, anchor }) => ({
      findingId: finding.findingId,
      location: text,
      point: shift(anchor.point, by),
      strokes: anchor.strokes.map((stroke) => stroke.map((point) => shift(point, by))),
    })),
    tags: hung.tags.map((tag) => ({
      ...tag,
      at: shift(tag.at, by),
      leaders: tag.leaders.map(({ from, to }) => ({ from: shift(from, by), to: shift(to, by) })),
    })),
  };
}

/**
 * The drawings that show where findings are: one for each part of the machine that is drawn on its own, in the order in
 * which the findings are given. Every place of every finding is on exactly one of them.
 *
 * @throws AppError 'location-malformed' for a place that cannot be read
 */
export function diagramsFor(findings: readonly PlacedFinding[], layout: Layout): readonly Diagram[] {
  const places = findings.flatMap((finding) =>
    finding.locations.map((text): Place => ({ finding, text, location: parseLocation(text) })),
  );
  return groupsOf(places, layout).map((group) => compose(group, layout));
}

/** The drawing of one finding's first place, with those of its other places that are on it too; null without a place. */
export function diagramFor(finding: PlacedFinding, layout: Layout): Diagram | null {
  return diagramsFor([finding], layout)[0] ?? null;
}
