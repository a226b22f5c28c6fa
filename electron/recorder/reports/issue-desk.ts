import type { Context } from '../context.ts';

/** One report is issued at a time: each takes the next number, and the first of all makes the shop's key. */
class IssueDesk {
  #last: Promise<unknown> = Promise.resolve();

  /** Runs `work` when what was asked for before it has ended, however it ended. */
  inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work, work);
    this.#last = mine;
    return mine;
  }

  /** Whoever asked waits for his own; closing the folder does not. */
  close(): void {}
}

export const issueDeskOf = ({ services }: Pick<Context, 'services'>): IssueDesk =>
  services.get('issue desk', () => new IssueDesk());
