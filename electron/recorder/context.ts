import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { CheckedInputOf, InputOf, OperationName, OutputOf } from '../../shared-lib/contract/operations.ts';
import type { ReadableDb } from './database/connection.ts';
import type { RecordWriter } from './journal/record-writer.ts';
import type { Tokens } from './tokens.ts';

/** Who calls. */
export interface Caller {
  readonly windowId: string;
  readonly operation: string;
}

/** For entries that are written down later than they happened. The journal keeps the time of writing. */
export interface CallAs {
  readonly clock?: () => number;
  /** Undo's scope: what is entered from a file is nobody's step to take back. */
  readonly windowId?: string;
}

/** What every handler may use. Clock and ids come in, so that tests can fix them. */
export interface Context {
  readonly db: ReadableDb;
  readonly dataFolder: string;
  readonly clock: () => number;
  readonly zoneOffsetMin: () => number;
  readonly newId: () => string;
  readonly emit: (event: RecorderEvent) => void;
  readonly tokens: Tokens;
  readonly caller: Caller;
  readonly personId: () => string | null;
  /** One mutation of a handler that works outside a transaction; entries with one `stepId` are one undo step. */
  readonly mutate: <T>(work: (writer: RecordWriter) => T, options?: { stepId?: string; reverses?: string }) => T;
  /** Another operation for the same window, through the same gate; throws the AppError that the window would be told. */
  readonly call: <N extends OperationName>(name: N, input: InputOf<N>, as?: CallAs) => Promise<OutputOf<N>>;
  /** What the quick check after the start found. */
  readonly damage: () => string | null;
  /** Work begun for a caller that goes on after the reply; closing the recorder waits for it. */
  readonly background: (work: Promise<void>) => void;
  readonly services: Services;
}

/** Rooms with a life of their own, opened when first asked for: photos and the typesetter load slowly. */
export interface Services {
  get<T extends { close(): Promise<void> | void }>(name: string, open: () => T): T;
}

/** Reads: no transaction, no journal. */
type Reading<N extends OperationName> = (
  context: Context,
  input: CheckedInputOf<N>,
) => OutputOf<N> | Promise<OutputOf<N>>;
/** Changes: run inside one transaction, answered after its commit. */
type Changing<N extends OperationName> = (
  context: Context,
  writer: RecordWriter,
  input: CheckedInputOf<N>,
) => OutputOf<N>;

export type Handler<N extends OperationName> =
  | { readonly read: Reading<N> }
  | { readonly change: Changing<N> }
  /** Waits for the world (files, the typesetter) and calls `context.mutate` itself. */
  | { readonly outside: Reading<N> };

export type Handlers = { readonly [N in OperationName]?: Handler<N> };
