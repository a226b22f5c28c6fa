import { AppError } from '../../../shared-lib/contract/errors.ts';
import { type PhotoRoom, type PhotoSource, type TakenIn, takeIn } from './take-in.ts';

export interface OfferedItem {
  readonly name: string;
  readonly source: PhotoSource;
}

export type ItemOutcome<C> =
  | { readonly name: string; readonly accepted: C }
  | { readonly name: string; readonly refused: AppError };

export interface ImportPlan<C> {
  readonly room: PhotoRoom;
  readonly items: readonly OfferedItem[];
  readonly signal: AbortSignal;
  /** Called in the order of offering, each time with bytes and name already on the disk. */
  readonly commit: (taken: TakenIn, item: OfferedItem) => C;
  readonly progress: (outcome: ItemOutcome<C>, done: number) => void;
  /** Turns a bug into a refusal of that one file: the others are still taken in. */
  readonly fault: (cause: unknown) => AppError;
}

/** As many as the decoder has children, and one that is copied meanwhile. */
const atOnce = 3;

type Arrived = { readonly taken: TakenIn } | { readonly refused: AppError } | 'stopped';

/**
 * Takes many files in, a few at a time. The numbers that shots get follow the order of offering, so a quick file waits for
 * the slow one before it.
 *
 * @returns the outcomes in the order of offering; without those that a stop left undone
 */
export const importPhotos = async <C>(plan: ImportPlan<C>): Promise<ItemOutcome<C>[]> => {
  const { room, items, signal, commit, progress, fault } = plan;
  const arrived = new Map<number, Arrived>();
  const outcomes: ItemOutcome<C>[] = [];
  let nextToStart = 0;
  let nextToCommit = 0;

  const refusal = (cause: unknown): AppError => (cause instanceof AppError ? cause : fault(cause));

  const settle = (item: OfferedItem, arrival: Exclude<Arrived, 'stopped'>): ItemOutcome<C> => {
    if ('refused' in arrival) return { name: item.name, refused: arrival.refused };
    try {
      return { name: item.name, accepted: commit(arrival.taken, item) };
    } catch (cause) {
      return { name: item.name, refused: refusal(cause) };
    }
  };

  const commitInOrder = (): void => {
    for (let arrival = arrived.get(nextToCommit); arrival; arrival = arrived.get(nextToCommit)) {
      arrived.delete(nextToCommit);
      const item = items[nextToCommit];
      nextToCommit += 1;
      if (arrival === 'stopped' || !item) continue;
      const outcome = settle(item, arrival);
      outcomes.push(outcome);
      progress(outcome, outcomes.length);
    }
  };

  const takeOne = async ({ source, name }: OfferedItem): Promise<Arrived> => {
    try {
      return { taken: await takeIn(room, source, name, signal) };
    } catch (cause) {
      return signal.aborted ? 'stopped' : { refused: refusal(cause) };
    }
  };

  const lane = async (): Promise<void> => {
    while (!signal.aborted) {
      const index = nextToStart;
      const item = items[index];
      if (!item) return;
      nextToStart += 1;
      arrived.set(index, await takeOne(item));
      commitInOrder();
    }
  };

  await Promise.all(Array.from({ length: Math.min(atOnce, items.length) }, lane));
  return outcomes;
};
