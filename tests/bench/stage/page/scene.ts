import type { Tag } from '../../../../shared-lib/geometry/tag-plate.ts';
import { findingStates } from '../../../../shared-lib/model/finding.ts';
import { type Mark, type ShapeName, shapeNames } from '../../../../shared-lib/model/mark.ts';

export interface Scene {
  readonly photo: { readonly width: number; readonly height: number };
  readonly screenUrl: string;
  readonly originalUrl: string | null;
  readonly hasRegions: boolean;
  readonly marks: Mark[];
  readonly tags: Map<string, Tag>;
}

/** The same numbers at every run (mulberry32 by T. Ettinger, public domain, from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export function sceneFromAddress(): Scene {
  const query = new URL(location.href).searchParams;
  const photo = { width: Number(query.get('width')), height: Number(query.get('height')) };
  const name = query.get('photo') ?? 'none';
  const marks = marksOver(photo, Number(query.get('marks') ?? 0));
  return {
    photo,
    screenUrl: `/photos/${name}.screen.jpg`,
    originalUrl: query.get('original') === 'no' ? null : `/photos/${name}.jpg`,
    hasRegions: query.get('regions') === 'yes',
    marks,
    tags: new Map(marks.map((mark, index) => [mark.findingId ?? '', tagAt(index)])),
  };
}

function tagAt(index: number): Tag {
  const state = findingStates[index % 7 < 4 ? 0 : (index % 7) - 3] ?? 'confirmed';
  const tier = ([0, 1, 2, 3, 4] as const)[index % 5] ?? 4;
  return { number: index + 1, tier, state };
}

export function marksOver(photo: { width: number; height: number }, count: number): Mark[] {
  const next = random(7);
  const length = photo.width / 40;
  return Array.from({ length: count }, (_, index) => {
    const shape = shapeNames[index % shapeNames.length] ?? 'point';
    const at = {
      x: next() * photo.width * 0.92 + photo.width * 0.02,
      y: next() * photo.height * 0.92 + photo.height * 0.04,
    };
    return {
      id: `mark-${index}`,
      shotId: 'shot',
      findingId: `finding-${index}`,
      shape,
      points: pointsOf(shape, at, length, next),
      role: 'finding',
      origin: { by: 'hand' },
      calibrationId: null,
      tagAt: null,
      note: '',
    };
  });
}

function pointsOf(shape: ShapeName, at: { x: number; y: number }, length: number, next: () => number) {
  if (shape === 'point') return [at];
  const turn = next() * 2 * Math.PI;
  if (shape === 'area') {
    return Array.from({ length: 12 }, (_, step) => {
      const angle = (step / 12) * 2 * Math.PI;
      const radius = length * (0.5 + 0.15 * next());
      return { x: at.x + radius * Math.cos(angle), y: at.y + 0.7 * radius * Math.sin(angle) };
    });
  }
  const steps = shape === 'path' ? 8 : 1;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const along = (length * step) / steps;
    const aside = shape === 'path' ? (next() - 0.5) * length * 0.12 : 0;
    return {
      x: at.x + along * Math.cos(turn) - aside * Math.sin(turn),
      y: at.y + along * Math.sin(turn) + aside * Math.cos(turn),
    };
  });
}
