import type { Answer } from '../../shared-lib/contract/bridge.ts';
import { firstQuestions } from '../../shared-lib/contract/first-questions.ts';
import type { RecorderProcess } from './recorder-process.ts';

const keyOf = (name: string, input: unknown): string => `${name} ${JSON.stringify(input)}`;

/**
 * The first questions of a window, asked while it is still being made. Each answer is given once, and only as long as
 * nothing else was asked and nothing has changed: it can never be older than what the window itself has done.
 */
export class AskedAhead {
  readonly #answers = new Map<string, Promise<Answer>>();

  ask(recorder: Pick<RecorderProcess, 'call'>): void {
    for (const { name, input } of firstQuestions) {
      this.#answers.set(keyOf(name, input), recorder.call({ windowId: 'the first', name, input }));
    }
  }

  /** Undefined where it has to be asked; a refusal is asked again, for its reason may have passed. */
  async take(name: string, input: unknown): Promise<Answer | undefined> {
    const key = keyOf(name, input);
    const asked = this.#answers.get(key);
    if (asked === undefined) this.forget();
    this.#answers.delete(key);
    const answer = await asked;
    return answer?.ok === true ? answer : undefined;
  }

  forget(): void {
    this.#answers.clear();
  }
}
