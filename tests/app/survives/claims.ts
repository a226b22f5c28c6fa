import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';

type Value = string | number | boolean;

/** What the window has shown as done, by the name of a thing, and how the record answers for it. */
export class Claims {
  readonly #shown = new Map<string, Value>();
  /** Asked for and not yet shown: such a change may be there or not, but never half. */
  readonly #asked = new Map<string, Set<Value>>();

  get count(): number {
    return this.#shown.size;
  }

  asks(name: string, value: Value): void {
    const values = this.#asked.get(name) ?? new Set();
    this.#asked.set(name, values.add(value));
  }

  shows(name: string, value: Value): void {
    this.#shown.set(name, value);
    this.#asked.delete(name);
  }

  /** What the window had shown and the record does not hold. Afterwards the record's word is the one to hold. */
  missingIn(record: VisitRecord): string[] {
    const held = thingsIn(record);
    const missing: string[] = [];
    for (const [name, value] of this.#shown) {
      const found = held.get(name);
      if (found === value || (found !== undefined && this.#asked.get(name)?.has(found))) {
        this.#shown.set(name, found);
      } else missing.push(`${name}: shown as ${value}, is ${found ?? 'not there'}`);
    }
    this.#asked.clear();
    return missing;
  }
}

function thingsIn({ findings, marks, shots }: VisitRecord): Map<string, Value> {
  const things = new Map<string, Value>();
  for (const { id, number, words, urgency, runWorse, damageClass } of findings) {
    things.set(`finding ${number}`, true);
    things.set(`words of finding ${number}`, words);
    if (urgency !== null) things.set(`urgency of finding ${number}`, urgency);
    if (runWorse !== null) things.set(`run-worse of finding ${number}`, runWorse);
    if (damageClass !== null) things.set(`damage class of finding ${number}`, damageClass);
    const shapes = marks.filter(({ findingId }) => findingId === id).map(({ shape }) => shape);
    if (shapes.length > 0) things.set(`mark of finding ${number}`, shapes.join());
  }
  for (const { offeredName, binned } of shots) things.set(`photo ${offeredName}`, !binned);
  return things;
}
