import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { call } from '../api/client.ts';
import type { MarkChange } from '../stage/tools/machine.ts';

/** A gesture that makes a mark. */
type Drawn = Extract<MarkChange, { type: 'add' | 'trace' | 'grow' }>;

interface MarkChanges {
  readonly record: VisitRecord;
  readonly shot: Shot;
  /** The finding whose card is open: a new mark belongs to it. */
  readonly findingId: string | undefined;
  readonly onMark: (mark: Mark) => void;
  readonly onGone: () => void;
}

/**
 * Writes what a gesture did. A mark drawn while no finding is in hand begins one, at the photo's part: the card opens on
 * it, and what it is can be picked at once.
 */
export function useMarkChanges({ record, shot, findingId, onMark, onGone }: MarkChanges) {
  const [error, setError] = useState<unknown>(null);
  const [finding, setFinding] = useState<'line' | 'outline' | null>(null);

  const found = async <T>(what: 'line' | 'outline', work: Promise<T>): Promise<T> => {
    setFinding(what);
    return await work.finally(() => setFinding(null));
  };

  const drawn = (change: Drawn, pointPx: number): Promise<Mark> => {
    const on = { shotId: shot.id, points: change.points, findingId: findingId ?? null };
    if (change.type === 'add') return call('mark.add', { ...on, shape: change.shape, origin: { by: 'hand', pointPx } });
    if (change.type === 'grow') return found('outline', call('mark.grow', on));
    const { scribble } = change;
    return found('line', call('mark.trace', { ...on, pointPx, ...(scribble ? { scribble } : {}) }));
  };

  const add = async (change: Drawn, pointPx: number): Promise<void> => {
    const mark = await drawn(change, pointPx);
    if (findingId !== undefined) {
      onMark(mark);
      return;
    }
    const finding = await call('finding.add', {
      visitId: record.visit.id,
      markId: mark.id,
      ...(shot.component === null ? {} : { locations: [shot.component] }),
    });
    onMark({ ...mark, findingId: finding.id });
  };

  const retrace = async ({ markId, points }: Extract<MarkChange, { type: 'retrace' }>, pointPx: number) => {
    const before = record.marks.find(({ id }) => id === markId)?.origin;
    // The ends keep the sureness they were set with: a way point only leads.
    const set = before?.by === 'traced' ? Number(before.parameters.pointPx) : Number.NaN;
    await found('line', call('mark.retrace', { id: markId, points, pointPx: set > 0 ? set : pointPx }));
  };

  const write = async (change: MarkChange, pointPx: number): Promise<void> => {
    if (change.type === 'add' || change.type === 'trace' || change.type === 'grow') return add(change, pointPx);
    if (change.type === 'retrace') return retrace(change, pointPx);
    if (change.type === 'remove') {
      await call('mark.remove', { id: change.markId });
      onGone();
      return;
    }
    await call('mark.change', {
      id: change.markId,
      ...(change.points ? { points: change.points, ...originNow(change.markId, pointPx) } : {}),
      ...(change.tagAt ? { tagAt: change.tagAt } : {}),
    });
  };

  /** A hand that moves its own points sets them anew at this zoom. */
  const originNow = (markId: string, pointPx: number): { origin?: Mark['origin'] } => {
    const before = record.marks.find(({ id }) => id === markId)?.origin;
    if (before?.by === 'hand') return { origin: { by: 'hand', pointPx } };
    return before?.by === 'carried' ? { origin: { ...before, isSetAnew: true, pointPx } } : {};
  };

  const commit = async (change: MarkChange, pointPx: number): Promise<void> => {
    setError(null);
    try {
      await write(change, pointPx);
    } catch (thrown) {
      setError(thrown);
      // The stage takes the drawn change off again.
      throw thrown;
    }
  };
  return { commit, error, finding };
}
