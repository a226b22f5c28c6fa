import type { OfferedPath } from '../../shared-lib/contract/envelope.ts';
import { AppError } from '../../shared-lib/contract/errors.ts';

/** Paths that the shell (never the window) has named, each to be used once. */
export class Tokens {
  readonly #offers = new Map<string, OfferedPath>();

  offer(offer: OfferedPath): void {
    this.#offers.set(offer.token, offer);
  }

  /** @throws AppError 'token-spent' for one that was never offered, was used, or was offered for the other purpose */
  spend(token: string, purpose: OfferedPath['for']): string {
    const offer = this.#offers.get(token);
    this.#offers.delete(token);
    if (!offer || offer.for !== purpose) throw new AppError('token-spent', {});
    return offer.path;
  }
}
