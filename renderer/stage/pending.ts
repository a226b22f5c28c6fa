import type { Mark } from '../../shared-lib/model/mark.ts';
import type { Draft, MarkChange } from './tools/machine.ts';
import { bentTo } from './tools/pick/way.ts';

/** What was committed, as the overlay shows it until it comes back as a mark. */
export function draftOfChange(change: MarkChange, marks: readonly Mark[]): Draft | null {
  if (change.type === 'remove') return null;
  if (change.type === 'add') return draftOf(change.shape, change.points, null, null);
  // What the tracer will find is not known yet: the way that was set stands for it.
  if (change.type === 'trace') return draftOf('path', change.scribble ?? change.points, null, null);
  if (change.type === 'grow') return draftOf(change.points.length > 1 ? 'path' : 'point', change.points, null, null);
  const mark = marks.find(({ id }) => id === change.markId);
  if (!mark) return null;
  if (change.type === 'retrace') {
    const shown = draftOf(mark.shape, bentTo(mark.points, change.points), mark.id, mark.tagAt);
    return shown && { ...shown, handles: change.points };
  }
  return draftOf(mark.shape, change.points ?? mark.points, mark.id, change.tagAt ?? mark.tagAt);
}

function draftOf(
  shape: Mark['shape'],
  points: Mark['points'],
  markId: string | null,
  tagAt: Mark['tagAt'],
): Draft | null {
  const focus = points[0];
  return focus ? { shape, points, markId, tagAt, focus } : null;
}

/** The marks as they will be once the pending change is in: the next gesture builds on it. */
export function withPending(marks: readonly Mark[], pending: Draft | null): readonly Mark[] {
  if (!pending || pending.markId === null) return marks;
  return marks.map((mark) => (mark.id === pending.markId ? changedMark(mark, pending) : mark));
}

function changedMark(mark: Mark, { points, handles, tagAt }: Draft): Mark {
  const { origin } = mark;
  if (handles === undefined || origin.by !== 'traced') return { ...mark, points: [...points], tagAt };
  // What was read along the old way says nothing of the new one.
  const { reading: _, ...led } = origin;
  return {
    ...mark,
    points: [...points],
    tagAt,
    origin: { ...led, parameters: { ...origin.parameters, points: [...handles] } },
  };
}
