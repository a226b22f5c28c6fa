import { useEffect, useState } from 'react';
import type { MachinePage } from '../../shared-lib/contract/machines.ts';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { today } from '../ui/words.ts';
import { emptyOwner, type OwnerDraft } from './OwnerForm.tsx';
import { usualLayout } from './usual-layout.ts';
import { emptyVisitDraft, type VisitDraft } from './visit-draft.ts';

export const emptyPlate = { kind: '', serial: '', year: '', engineSerial: '', bay: '' };

/** A machine that is being taken in, before anything of it is written down. */
interface TakeInDraft {
  readonly plate: typeof emptyPlate;
  readonly owner: OwnerDraft;
  readonly layout: Layout;
  readonly visit: VisitDraft;
  /** Written already, when only the visit was refused: it is not taken in twice. */
  readonly added: MachinePage | null;
}

const emptyDraft = (): TakeInDraft => ({
  plate: emptyPlate,
  owner: emptyOwner,
  layout: usualLayout,
  visit: emptyVisitDraft(today()),
  added: null,
});

const isEmpty = (draft: TakeInDraft): boolean => JSON.stringify(draft) === JSON.stringify(emptyDraft());

/** What was typed when the place was left, to look something up or by a slip: it stands there on coming back. */
let leftOff: TakeInDraft | null = null;

export function useTakeInDraft() {
  const [draft, setDraft] = useState(() => leftOff ?? emptyDraft());
  useEffect(() => {
    leftOff = isEmpty(draft) ? null : draft;
  }, [draft]);
  const set = (part: Partial<TakeInDraft>) => setDraft((now) => ({ ...now, ...part }));
  return {
    draft,
    set,
    isEmpty: isEmpty(draft),
    /** Nothing of it is wanted, or all of it is on record. */
    forget: () => {
      leftOff = null;
      setDraft(emptyDraft());
    },
  };
}
