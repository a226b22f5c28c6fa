import { v7 as uuidv7 } from 'uuid';
import { connect, type WritableDb } from '../../../electron/recorder/database/connection.ts';
import { openForWriting } from '../../../electron/recorder/database/open.ts';
import { makeDispatcher, orThrow } from '../../../electron/recorder/dispatcher.ts';
import { handlers } from '../../../electron/recorder/handlers.ts';
import { openRecorder } from '../../../electron/recorder/open-recorder.ts';
import { Tokens } from '../../../electron/recorder/tokens.ts';
import type { InputOf, OperationName, OutputOf } from '../../../shared-lib/contract/operations.ts';

export interface UnsyncedRecorder {
  readonly db: WritableDb;
  call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
  close(): void;
}

/** The recorder's own operations on a database that waits for no disk: fills a large record in a bearable time. */
export const openUnsynced = async (dataFolder: string): Promise<UnsyncedRecorder> => {
  // The folder's first row is the recorder's own to write.
  await openRecorder({ dataFolder, program: 'bench' }).close();
  const sqlite = openForWriting(dataFolder);
  sqlite.pragma('synchronous = OFF');
  const db = connect(sqlite);
  const dispatch = makeDispatcher({
    db,
    handlers,
    log: () => {},
    base: {
      db,
      dataFolder,
      clock: Date.now,
      zoneOffsetMin: () => 0,
      newId: () => uuidv7(),
      emit: () => {},
      tokens: new Tokens(),
      personId: () => null,
      damage: () => null,
      background: () => {},
      services: {
        get: () => {
          throw new Error('a record is filled without photos and reports');
        },
      },
    },
  });
  return {
    db,
    call: async (name, input) => orThrow(await dispatch('bench', name, input)) as never,
    close: () => sqlite.close(),
  };
};
