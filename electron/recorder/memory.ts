/** Keeps what was computed for as long as it is asked for: what was asked for longest ago goes first. */
export class Memory<T> {
  readonly #known = new Map<string, T>();
  readonly #most: number;

  /** @param most  how many are kept */
  constructor(most: number) {
    this.#most = most;
  }

  /** @param compute  gives the same for the same key, and never undefined */
  get(key: string, compute: () => T): T {
    const known = this.#known.get(key);
    if (known !== undefined) {
      this.#known.delete(key);
      this.#known.set(key, known);
      return known;
    }
    const fresh = compute();
    this.#known.set(key, fresh);
    const [oldest] = this.#known.keys();
    if (this.#known.size > this.#most && oldest !== undefined) this.#known.delete(oldest);
    return fresh;
  }
}
