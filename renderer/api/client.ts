import type { WireError } from '../../shared-lib/contract/errors.ts';
import type { InputOf, OperationName, OutputOf } from '../../shared-lib/contract/operations.ts';
import { type ErrorSentence, errorSentence } from '../../shared-lib/wording/errors.ts';
import { bridge } from './bridge.ts';

/** A refusal from the recorder, in the closed vocabulary. */
export class CallError extends Error {
  readonly wire: WireError;

  constructor(name: string, wire: WireError) {
    super(`${name}: ${wire.code}`);
    this.name = 'CallError';
    this.wire = wire;
  }
}

/** Asks the recorder, and answers what the contract promises or throws a CallError. */
export async function call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const answer = await bridge.call(name, input);
  if (!answer.ok) throw new CallError(name, answer.error);
  return answer.output as OutputOf<N>;
}

/** The wire error behind anything thrown; a bug of the window's own is `internal`. */
export function wireErrorOf(thrown: unknown): WireError {
  if (thrown instanceof CallError) return thrown.wire;
  return { code: 'internal', details: {} };
}

/** The words for anything thrown. */
export function wordsOf(thrown: unknown): ErrorSentence {
  return errorSentence(wireErrorOf(thrown));
}

/** The words, if the refusal names this field of the input. */
export function wordsFor(field: string, thrown: unknown): ErrorSentence | undefined {
  if (thrown === null || thrown === undefined) return undefined;
  const wire = wireErrorOf(thrown);
  return wire.field === field ? errorSentence(wire) : undefined;
}
