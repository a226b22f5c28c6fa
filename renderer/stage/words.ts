import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { FindingState } from '../../shared-lib/model/finding.ts';
import type { ShapeName } from '../../shared-lib/model/mark.ts';

/** Every word that the stage itself says. */
export const shapeWords: Record<ShapeName, string> = {
  point: 'point',
  line: 'line',
  path: 'path',
  area: 'area',
  arrow: 'arrow',
  span: 'span',
};

export const stateWords: Record<FindingState, string> = {
  confirmed: 'confirmed',
  suspected: 'suspected',
  'not-examined': 'not examined',
  'none-found': 'none found',
};

/** A mark by the tag it wears; without one by its shape. */
export function markName(shape: ShapeName, tag: Tag | null): string {
  return tag
    ? `Finding ${tag.number}, ${stateWords[tag.state]}, ${shapeWords[shape]}`
    : `Mark without a finding, ${shapeWords[shape]}`;
}

export const stageWords = {
  label: 'Photo with marks',
  keys: 'Arrow keys move the cross-hair, Shift ten times as far. Enter or Space presses at the cross-hair. Tab goes from mark to mark, square brackets from point to point. Delete removes. Plus and minus zoom, 0 shows all, 1 shows every pixel. Ctrl with arrows moves the photo. Z magnifies. Escape lets go.',
  marks: 'Marks on this photo',
  noMarks: 'No marks yet.',
  tools: 'Tools',
  shots: 'Photos of this visit',
  more: (count: number) => `${count} more`,
  photo: (sequence: number) => `Photo ${sequence}`,
  added: (shape: ShapeName) => `${shapeWords[shape]} drawn`,
  changed: 'mark changed',
  scale: 'Scale',
  scaleHint: 'Set the scale: a known length, a known circle or known points.',
  tracing: 'Following the line',
  traced: 'ends set, the line between them is being followed',
  growing: 'Finding the outline',
  grown: 'patch shown, its outline is being found',
  removed: 'mark removed',
  loading: 'Bringing in the photo',
  sharpening: 'Bringing in every pixel',
  photoFailed: 'This photo cannot be shown. Its bytes are kept.',
  fullFailed: 'Only the smaller picture can be shown here. The original is kept.',
} as const;
