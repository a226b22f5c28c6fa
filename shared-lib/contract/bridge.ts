import type { WireError } from './errors.ts';
import type { RecorderEvent } from './events.ts';

export type Answer =
  | { readonly ok: true; readonly output: unknown }
  | { readonly ok: false; readonly error: WireError };

/** All that the preload puts on `window.witness`: nothing else of the machine reaches the renderer. */
export interface Bridge {
  call(name: string, input: unknown): Promise<Answer>;
  /** Returns the way to stop listening. */
  on(listener: (event: RecorderEvent) => void): () => void;
  /** Turns dropped or pasted File objects into one-use tokens; files without a path are left out. */
  offerFiles(files: readonly unknown[]): Promise<string[]>;
}
