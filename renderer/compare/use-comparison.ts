import { useEffect, useMemo, useRef, useState } from 'react';
import { registerPairs } from '../../shared-lib/comparison/check-pairs.ts';
import type { Registration } from '../../shared-lib/comparison/register.ts';
import type { MatchedPair, ThenAndNow } from '../../shared-lib/contract/comparisons.ts';
import { AppError } from '../../shared-lib/contract/errors.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { CallError } from '../api/client.ts';
import { useAnswer, useChange, useKeepAnswer } from '../api/queries.ts';

/** The matched points in hand and the mapping that follows from them. */
export interface ComparisonInHand {
  readonly pairs: readonly MatchedPair[];
  /** The last one that held; null while there is none. */
  readonly registration: Registration | null;
  /** `kept` is on record; `found` waits for a person's word; `none` is begun by hand. */
  readonly state: 'searching' | 'found' | 'kept' | 'none';
  /** How many spots agreed when the photos were searched. */
  readonly foundCount: number;
  readonly error: unknown;
  /** Shows points elsewhere without writing them: while a hand moves one. */
  readonly show: (pairs: readonly MatchedPair[]) => void;
  /** Shows them and writes them, where they hold. */
  readonly set: (pairs: readonly MatchedPair[]) => void;
  readonly keep: () => void;
}

interface Tried {
  readonly registration: Registration | null;
  readonly error: unknown;
}

function tryPairs(pairs: readonly MatchedPair[], earlier: Shot, later: Shot): Tried {
  try {
    return { registration: registerPairs(pairs, { earlier, later }), error: null };
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    return { registration: null, error: new CallError('comparison.keep', error.toWire()) };
  }
}

/** Suggested points until a person keeps or corrects them; from then on every correction is written at once. */
export function useComparison(seen: ThenAndNow, shot: Shot): ComparisonInHand {
  const earlier = seen.earlier.shot;
  const pair = { shotId: shot.id, earlierShotId: earlier.id };
  const kept = seen.comparison;
  const [draft, setDraft] = useState<readonly MatchedPair[] | null>(null);
  const latest = useRef(draft);
  const suggestion = useAnswer('comparison.suggest', pair, { when: kept === null });
  const keeping = useChange('comparison.keep');
  const keepAnswer = useKeepAnswer();
  const fresh = kept === null ? suggestion.data?.pairs : undefined;
  const pairs = draft ?? kept?.pairs ?? fresh ?? [];
  const tried = useMemo(() => tryPairs(pairs, earlier, shot), [pairs, earlier, shot]);
  const lastGood = useRef<Registration | null>(null);
  if (tried.registration) lastGood.current = tried.registration;

  // What was taken back or brought back elsewhere is what stands.
  const keptAs = JSON.stringify(kept?.pairs ?? null);
  const lastKeptAs = useRef(keptAs);
  useEffect(() => {
    if (lastKeptAs.current === keptAs) return;
    lastKeptAs.current = keptAs;
    latest.current = null;
    setDraft(null);
  }, [keptAs]);

  const show = (next: readonly MatchedPair[]): void => {
    latest.current = next;
    setDraft(next);
  };
  const write = (next: readonly MatchedPair[]): void => {
    if (!tryPairs(next, earlier, shot).registration) return;
    keeping.run({ ...pair, pairs: [...next] }, (comparison) => {
      keepAnswer('comparison.see', pair, { ...seen, comparison, earlier: { ...seen.earlier, isKept: true } });
      // A hand that has gone on meanwhile is not pulled back.
      if (latest.current === next) show(comparison.pairs);
    });
  };
  const isSearching = kept === null && draft === null && suggestion.isPending;
  return {
    pairs,
    registration: tried.registration ?? lastGood.current,
    state: isSearching ? 'searching' : kept ? 'kept' : draft === null && fresh ? 'found' : 'none',
    foundCount: suggestion.data?.found ?? 0,
    error: keeping.error ?? (pairs.length > 0 ? tried.error : kept === null ? suggestion.error : null),
    show,
    set: (next) => {
      show(next);
      keeping.forgetError();
      write(next);
    },
    keep: () => write(pairs),
  };
}
