/** Chances that are the same in every run with the same seed (mulberry32, in the public domain). */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** From 0, and always below 1. */
  share(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  between(least: number, most: number): number {
    return least + this.share() * (most - least);
  }

  /** @throws RangeError when there is none to choose */
  oneOf<T>(values: readonly T[]): T {
    const [value] = values.slice(Math.floor(this.share() * values.length));
    if (value === undefined) throw new RangeError('nothing to choose from');
    return value;
  }
}
