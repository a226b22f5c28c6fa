import { flushCompileCache } from 'node:module';
import { parseArgs } from 'node:util';
import type { FromRecorder, ToRecorder } from '../../shared-lib/contract/envelope.ts';
import { AppError } from '../../shared-lib/contract/errors.ts';
import { damageBeside } from './database/damage-beside.ts';
import { openRecorder, type Recorder } from './open-recorder.ts';
import { locatePhoto } from './photos/locate-photo.ts';

/** The recorder as a child of the shell: messages in, messages out, gone when the shell is gone. */
const tell = (message: FromRecorder): void => {
  process.send?.(message);
};

const open = (dataFolder: string): Recorder | null => {
  try {
    return openRecorder({ dataFolder, program: 'Witness Mark', emit: (event) => tell({ kind: 'event', event }) });
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    tell({ kind: 'cannot-open', error: error.toWire() });
    return null;
  }
};

const listen = (recorder: Recorder): void => {
  const stop = (): void => {
    void recorder.close().finally(() => process.exit(0));
  };
  const hear = (message: ToRecorder): void => {
    if (message.kind === 'call') {
      const { id, windowId, name, input } = message.call;
      void recorder.dispatch(windowId, name, input).then((answer) => tell({ kind: 'reply', reply: { id, ...answer } }));
    } else if (message.kind === 'offer') recorder.offer(message.offer);
    else if (message.kind === 'photo') {
      void locatePhoto(recorder, message.request.url).then((found) =>
        tell({
          kind: 'photo',
          answer: { id: message.request.id, path: found?.path ?? null, mediaType: found?.mediaType ?? null },
        }),
      );
    } else stop();
  };
  // Messages that arrive together are heard one a turn, still in their order: otherwise the first would be answered
  // only when the last of them is done.
  process.on('message', (message: ToRecorder) => setImmediate(hear, message));
  // The shell was killed: nobody is left to answer, and the folder must be free for the next one. An ordinary exit would
  // first wait for a report that is being typeset; what was answered is on the disk either way.
  process.on('disconnect', () => process.kill(process.pid, 'SIGKILL'));
};

const { values } = parseArgs({ options: { data: { type: 'string' } } });
if (values.data === undefined) throw new Error('the recorder needs --data DIR');
const recorder = open(values.data);
if (recorder) {
  listen(recorder);
  tell({ kind: 'ready' });
  const { dataFolder } = recorder;
  // The next start finds its code compiled, however this run ends. It is asked for by NODE_COMPILE_CACHE, else does nothing.
  setTimeout(flushCompileCache, 2_000).unref();
  // After the first screen, so that a large record does not hold it up.
  setTimeout(() => {
    damageBeside(dataFolder).then(
      (damage) => {
        if (damage) recorder.setDamage(damage);
      },
      // Nothing is known to be wrong: the next start checks again, and `wm check` whenever it is asked.
      (cause) => process.stderr.write(`the check after the start was not made: ${String(cause)}\n`),
    );
  }, 3_000).unref();
  // The day's copy, a little later still; a full disk or a folder that cannot be written must not stop the work.
  setTimeout(() => {
    recorder.copyDaily().catch((cause) => process.stderr.write(`the day's copy was not made: ${String(cause)}\n`));
  }, 15_000).unref();
}
