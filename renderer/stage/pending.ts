import type { Mark } from '../../shared-lib/model/mark.ts';
import type { Draft, MarkChange } from './tools/machine.ts';

/** What was committed, as the overlay shows it until it comes back as a mark. */
export function draftOfChange(change: MarkChange, marks: readonly Mark[]): Draft | null {
  if (change.type === 'remove') return null;
  if (change.type === 'add') return draftOf(change.shape, change.points, null, null);
  const mark = marks.find(({ id }) => id === change.markId);
  return mark ? draftOf(mark.shape, change.points ?? mark.points, mark.id, change.tagAt ?? mark.tagAt) : null;
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
  return marks.map((mark) =>
    mark.id === pending.markId ? { ...mark, points: [...pending.points], tagAt: pending.tagAt } : mark,
  );
}
