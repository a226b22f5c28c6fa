import type { ZodError, z } from 'zod';
import type { Answer } from '../../shared-lib/contract/bridge.ts';
import { AppError } from '../../shared-lib/contract/errors.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { Operation } from '../../shared-lib/contract/operation.ts';
import { type OperationName, operations } from '../../shared-lib/contract/operations.ts';
import type { CallAs, Context, Handler, Handlers } from './context.ts';
import type { WritableDb } from './database/connection.ts';
import { type Author, type Committed, mutate, type RecordWriter } from './journal/record-writer.ts';
import { keepIndex } from './search/keep-index.ts';

export interface DispatcherParts {
  readonly db: WritableDb;
  readonly handlers: Handlers;
  /** Everything of a context that does not depend on the call. */
  readonly base: Omit<Context, 'caller' | 'mutate' | 'call'>;
  /** Opened beside a holder: nothing may be changed, not even files beside the database. */
  readonly readOnly?: boolean;
  /** One line a call, for the log. */
  readonly log: (line: string) => void;
}

const invalidInput = (error: ZodError): AppError => {
  const issues = error.issues.map(({ path, message }) => ({ path: path.join('.'), message }));
  const field = issues[0]?.path;
  return new AppError('invalid-input', { issues }, field ? { field } : {});
};

/** What a commit tells every window. */
export const changedEvent = (committed: Committed): RecorderEvent => ({
  event: 'changed',
  records: committed.changes.map(({ table, id }) => ({ type: table, id })),
  visitIds: committed.visitId === null ? [] : [committed.visitId],
  machineIds: committed.machineId === null ? [] : [committed.machineId],
});

const asAppError = (cause: unknown): AppError | null => {
  if (cause instanceof AppError) return cause;
  const code = (cause as { code?: unknown }).code;
  if (code === 'SQLITE_FULL' || code === 'ENOSPC') return new AppError('disk-full', {}, { cause });
  if (typeof code === 'string' && code.startsWith('SQLITE_CORRUPT')) {
    return new AppError('folder-damaged', { what: 'record.sqlite' }, { cause });
  }
  return null;
};

/** For code of our own: the output, or the refusal as the AppError it was. */
export const orThrow = (answer: Answer): unknown => {
  if (answer.ok) return answer.output;
  const { code, details, field } = answer.error;
  throw new AppError(code, { ...details }, field === undefined ? {} : { field });
};

/** Name to handler: validate, run, map errors, one log line. The single gate of the recorder. */
export const makeDispatcher = ({ db, handlers, base, log, readOnly = false }: DispatcherParts) => {
  const contextFor = (windowId: string, name: OperationName, undoable: boolean, as: CallAs = {}): Context => {
    const author = (stepId: string, reverses: string | null): Author => ({
      personId: base.personId(),
      windowId,
      operation: name,
      undoable,
      stepId,
      reverses,
      atMs: base.clock(),
      zoneOffsetMin: base.zoneOffsetMin(),
    });
    return {
      ...base,
      ...(as.clock ? { clock: as.clock } : {}),
      caller: { windowId, operation: name },
      call: async (other, input, how) =>
        orThrow(await dispatch(how?.windowId ?? windowId, other, input, { ...as, ...how })) as never,
      mutate: <T>(work: (writer: RecordWriter) => T, options: { stepId?: string; reverses?: string } = {}): T => {
        const { result, committed } = mutate(
          db,
          author(options.stepId ?? base.newId(), options.reverses ?? null),
          work,
          (changes) => keepIndex(db, changes),
        );
        if (committed.changes.length > 0) base.emit(changedEvent(committed));
        return result;
      },
    };
  };

  const run = async (handler: Handler<OperationName>, context: Context, input: unknown): Promise<unknown> => {
    if ('read' in handler) return await (handler.read as (c: Context, i: unknown) => unknown)(context, input);
    if ('outside' in handler) return await (handler.outside as (c: Context, i: unknown) => unknown)(context, input);
    const work = handler.change as (c: Context, w: RecordWriter, i: unknown) => unknown;
    return context.mutate((writer) => work(context, writer, input));
  };

  const dispatch = async (windowId: string, name: string, input: unknown, as?: CallAs): Promise<Answer> => {
    const began = performance.now();
    const answer = await (async (): Promise<Answer> => {
      try {
        const operation = (Object.hasOwn(operations, name) ? operations[name as OperationName] : undefined) as
          | Operation<z.ZodType>
          | undefined;
        const handler = handlers[name as OperationName] as Handler<OperationName> | undefined;
        if (!operation || !handler) throw new AppError('unknown-operation', { name });
        if (readOnly && operation.effect !== 'none') throw new AppError('folder-read-only', {});
        const checked = operation.input.safeParse(input);
        if (!checked.success) throw invalidInput(checked.error);
        // Undo and redo write steps too, so that the stacks can be folded from the journal alone.
        const undoable = operation.effect === 'step' || name === 'undo.undo' || name === 'undo.redo';
        const context = contextFor(windowId, name as OperationName, undoable, as);
        return { ok: true, output: await run(handler, context, checked.data) };
      } catch (cause) {
        const known = asAppError(cause);
        if (known) return { ok: false, error: known.toWire() };
        const id = base.newId();
        log(`internal ${id} in ${name}: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}`);
        return { ok: false, error: new AppError('internal', { id }).toWire() };
      }
    })();
    log(`${name} ${answer.ok ? 'done' : answer.error.code} ${(performance.now() - began).toFixed(1)} ms`);
    return answer;
  };

  return (windowId: string, name: string, input: unknown): Promise<Answer> => dispatch(windowId, name, input);
};
