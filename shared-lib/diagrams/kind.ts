import type { Layout } from '../model/layout.ts';
import type { Location } from '../parts/location.ts';
import type { Scene } from './drawing.ts';

/** One way of drawing a part of a machine. */
export interface DiagramKind {
  readonly id: string;
  /** Which drawing of this kind a place belongs to; null where this kind cannot show it. */
  readonly subjectOf: (location: Location, layout: Layout) => string | null;
  /** Draws the subject so that all its places can be shown. */
  readonly draw: (subject: string, locations: readonly Location[], layout: Layout) => Scene;
}
