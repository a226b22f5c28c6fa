import type { Size } from '../../shared-lib/geometry/spaces.ts';
import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { View } from '../../shared-lib/geometry/viewport.ts';
import type { ImagePoint, Mark } from '../../shared-lib/model/mark.ts';
import type { Look } from './look.ts';
import type { StillPicture } from './still/still-marks.ts';
import type { ToolName } from './tools/index.ts';
import type { Draft, MarkChange } from './tools/machine.ts';

/** Words at a spot of the photo, on a dark band; their size stays the same at any zoom. */
export interface StageLabel {
  readonly id: string;
  readonly at: ImagePoint;
  readonly text: string;
}

/** What the screen around the stage says and is told. */
export interface StageScene {
  readonly photo: Size;
  readonly marks: readonly Mark[];
  readonly tags: ReadonlyMap<string, Tag>;
  readonly tool: ToolName;
  readonly picked: string | null;
  readonly onToolChange: (tool: ToolName) => void;
  readonly onPick: (markId: string | null) => void;
  /** `pointPx`: how surely the hand set a point at this zoom, px of the photo. */
  readonly onCommit: (change: MarkChange, pointPx: number) => unknown;
  readonly labels?: readonly StageLabel[] | undefined;
  readonly onViewChange?: ((view: View) => void) | undefined;
}

/** All that the overlay draws from; a new object whenever anything of it changes. */
export interface StageSnapshot {
  readonly view: View;
  readonly size: Size;
  readonly isMoving: boolean;
  readonly draft: Draft | null;
  readonly activeVertex: number | null;
  /** What was committed and has not come back as a mark yet. */
  readonly pending: Draft | null;
  readonly crossHair: ImagePoint | null;
  readonly loupeAt: ImagePoint | null;
  readonly look: Look | null;
  readonly picture: StillPicture | null;
  /** The picture of the still marks shows them as they are now. */
  readonly isDrawn: boolean;
  readonly spoken: string;
  readonly photoChanges: number;
  readonly labels: readonly StageLabel[];
}

export function sameLabels(a: readonly StageLabel[], b: readonly StageLabel[]): boolean {
  return (
    a === b ||
    (a.length === b.length &&
      a.every((label, index) => {
        const other = b[index];
        return (
          other?.id === label.id && other.text === label.text && other.at.x === label.at.x && other.at.y === label.at.y
        );
      }))
  );
}

/** A screen may hand in a new list of the same marks at every turn; that is no reason to draw them all again. */
export function sameMarks(a: readonly Mark[], b: readonly Mark[]): boolean {
  return a === b || (a.length === b.length && a.every((mark, index) => mark === b[index]));
}

export function sameTags(a: ReadonlyMap<string, Tag>, b: ReadonlyMap<string, Tag>): boolean {
  if (a === b) return true;
  if (a.size !== b.size) return false;
  for (const [id, tag] of a) {
    const other = b.get(id);
    if (!other || other.number !== tag.number || other.tier !== tag.tier || other.state !== tag.state) return false;
  }
  return true;
}
