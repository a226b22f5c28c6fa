import type { z } from 'zod';

/** How undo treats an operation: a step that can be taken back, a change that cannot, or no change at all. */
export type Effect = 'step' | 'change' | 'none';

/** One thing the window may ask of the recorder. The input is validated at the recorder's single gate; the output is typed. */
export interface Operation<I extends z.ZodType = z.ZodType, O = unknown> {
  readonly input: I;
  readonly effect: Effect;
  /** Carries the output type; never present at run time. */
  readonly output?: O;
}

const define =
  (effect: Effect) =>
  <O>() =>
  <I extends z.ZodType>(input: I): Operation<I, O> => ({ input, effect });

/** Reads; changes nothing. */
export const query = define('none');
/** Changes the record and can be undone in the window that did it. */
export const step = define('step');
/** Changes the record and is not undoable. */
export const change = define('change');
