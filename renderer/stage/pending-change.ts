import type { Mark } from '../../shared-lib/model/mark.ts';
import { draftOfChange } from './pending.ts';
import { sameMarks } from './stage-scene.ts';
import type { Draft, MarkChange } from './tools/machine.ts';
import { stageWords } from './words.ts';

/** A commit that never comes back as a mark is not shown for longer than this. */
const atMostMs = 4000;
/** A tracer opens the photo first, and a large one takes its time. */
const tracedAtMostMs = 30_000;

/** What was committed stays in sight until it comes back as a mark, so that nothing flickers. */
export class PendingChange {
  private marksBefore: readonly Mark[] | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly show: (pending: Draft | null) => void;

  constructor(show: (pending: Draft | null) => void) {
    this.show = show;
  }

  /** @param marksShown  with what is pending already: the next gesture builds on it */
  begin(change: MarkChange, marks: readonly Mark[], marksShown: readonly Mark[]): void {
    clearTimeout(this.timer);
    if (change.type === 'remove') return;
    this.marksBefore = marks;
    this.show(draftOfChange(change, marksShown));
    const isTraced = change.type === 'trace' || change.type === 'retrace';
    this.timer = setTimeout(() => this.drop(), isTraced ? tracedAtMostMs : atMostMs);
  }

  /** The record has answered once the marks are others than before. */
  hear(marks: readonly Mark[]): void {
    if (this.marksBefore && !sameMarks(marks, this.marksBefore)) this.drop();
  }

  drop(): void {
    clearTimeout(this.timer);
    this.marksBefore = null;
    this.show(null);
  }

  close(): void {
    clearTimeout(this.timer);
  }
}

/** What was just done, for a screen reader. */
export function spokenOf(change: MarkChange): string {
  switch (change.type) {
    case 'add':
      return stageWords.added(change.shape);
    case 'change':
      return stageWords.changed;
    case 'remove':
      return stageWords.removed;
    case 'grow':
      return stageWords.grown;
    case 'trace':
    case 'retrace':
      return stageWords.traced;
  }
}
