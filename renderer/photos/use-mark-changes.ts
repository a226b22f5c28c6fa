import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { call } from '../api/client.ts';
import type { MarkChange } from '../stage/tools/machine.ts';

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

  const add = async (change: Extract<MarkChange, { type: 'add' }>): Promise<void> => {
    const mark = await call('mark.add', {
      shotId: shot.id,
      shape: change.shape,
      points: change.points,
      findingId: findingId ?? null,
    });
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

  const write = async (change: MarkChange): Promise<void> => {
    if (change.type === 'add') return add(change);
    if (change.type === 'remove') {
      await call('mark.remove', { id: change.markId });
      onGone();
      return;
    }
    await call('mark.change', {
      id: change.markId,
      ...(change.points ? { points: change.points } : {}),
      ...(change.tagAt ? { tagAt: change.tagAt } : {}),
    });
  };

  const commit = async (change: MarkChange): Promise<void> => {
    setError(null);
    try {
      await write(change);
    } catch (thrown) {
      setError(thrown);
      // The stage takes the drawn change off again.
      throw thrown;
    }
  };
  return { commit, error };
}
