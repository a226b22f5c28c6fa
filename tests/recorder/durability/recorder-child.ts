import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import type { FromRecorder, ToRecorder } from '../../../shared-lib/contract/envelope.ts';
import type { RecorderEvent } from '../../../shared-lib/contract/events.ts';
import type { InputOf, OperationName, OutputOf } from '../../../shared-lib/contract/operations.ts';

const script = join(import.meta.dirname, '../../../electron/recorder/main.ts');

/** The recorder as the shell runs it: a process of its own, spoken to over its channel. */
export interface RecorderChild {
  readonly process: ChildProcess;
  readonly events: readonly RecorderEvent[];
  /** Rejects with the refusal's code, or 'recorder-stopped' when it ends without an answer. */
  call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
  send(message: ToRecorder): void;
  /** Resolves with the first event, past or to come, that it is asked for. */
  event(is: (event: RecorderEvent) => boolean): Promise<RecorderEvent>;
  readonly ended: Promise<unknown>;
  kill(): Promise<unknown>;
}

/**
 * Starts one on a folder and waits until it is ready.
 *
 * @param under  a program that runs it, such as a tracer, with its own words
 */
export const runRecorder = async (dataFolder: string, under: readonly string[] = []): Promise<RecorderChild> => {
  const [program = process.execPath, ...words] = [...under, process.execPath, script, '--data', dataFolder];
  const child = spawn(program, words, { stdio: ['ignore', 'inherit', 'inherit', 'ipc'], serialization: 'advanced' });
  const ended = once(child, 'exit');
  const waiting = new Map<number, { resolve: (output: never) => void; reject: (error: Error) => void }>();
  const events: RecorderEvent[] = [];
  const listeners = new Set<(event: RecorderEvent) => void>();
  let lastId = 0;
  const ready = new Promise<void>((resolve, reject) => {
    child.on('message', (message: FromRecorder) => {
      if (message.kind === 'ready') resolve();
      else if (message.kind === 'cannot-open') reject(new Error(message.error.code));
      else if (message.kind === 'event') {
        events.push(message.event);
        for (const listener of listeners) listener(message.event);
      } else if (message.kind === 'reply') {
        const asked = waiting.get(message.reply.id);
        waiting.delete(message.reply.id);
        if (message.reply.ok) asked?.resolve(message.reply.output as never);
        else asked?.reject(new Error(message.reply.error.code));
      }
    });
    child.once('exit', () => {
      reject(new Error('recorder-stopped'));
      for (const { reject } of waiting.values()) reject(new Error('recorder-stopped'));
      waiting.clear();
    });
  });
  await ready;

  const send = (message: ToRecorder): void => {
    child.send(message, () => {});
  };
  return {
    process: child,
    events,
    ended,
    kill: () => {
      child.kill('SIGKILL');
      return ended;
    },
    send,
    call: (name, input) =>
      new Promise((resolve, reject) => {
        lastId += 1;
        waiting.set(lastId, { resolve, reject });
        send({ kind: 'call', call: { id: lastId, windowId: 'window-1', name, input } });
      }),
    event: (is) =>
      new Promise((resolve) => {
        const hear = (event: RecorderEvent): void => {
          if (!is(event)) return;
          listeners.delete(hear);
          resolve(event);
        };
        listeners.add(hear);
        events.forEach(hear);
      }),
  };
};
