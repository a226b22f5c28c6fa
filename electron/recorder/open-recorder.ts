import { appendFileSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { v7 as uuidv7 } from 'uuid';
import type { Answer } from '../../shared-lib/contract/bridge.ts';
import type { OfferedPath } from '../../shared-lib/contract/envelope.ts';
import { AppError } from '../../shared-lib/contract/errors.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { InputOf, OperationName, OutputOf } from '../../shared-lib/contract/operations.ts';
import { isoDayAt, zoneMinutes } from '../../shared-lib/model/wall-clock.ts';
import { copyBeforeMigration, makeDailyCopy } from './backup/daily-copy.ts';
import type { Services } from './context.ts';
import { connect, type ReadableDb } from './database/connection.ts';
import { databaseFile, openForReading, openForWriting } from './database/open.ts';
import { makeDispatcher, orThrow } from './dispatcher.ts';
import { handlers } from './handlers.ts';
import { holdFolder } from './hold.ts';
import { makeIndex } from './search/keep-index.ts';
import { beginShop, shopRow } from './shop/queries.ts';
import { Tokens } from './tokens.ts';

export interface RecorderOptions {
  readonly dataFolder: string;
  /** Who holds the folder, in the words another program will be told. */
  readonly program: string;
  /** Reads beside a holder; every change is refused with its name. */
  readonly readOnly?: boolean;
  readonly clock?: () => number;
  readonly newId?: () => string;
  readonly emit?: (event: RecorderEvent) => void;
}

export interface Recorder {
  readonly db: ReadableDb;
  readonly dataFolder: string;
  readonly services: Services;
  /** Answers one call; never throws. */
  dispatch(windowId: string, name: string, input: unknown): Promise<Answer>;
  /** The same for code of our own: throws the AppError that a window would be told. */
  call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
  offer(offer: OfferedPath): void;
  /** The day's checked copy of the database beside the folder, once a day. @returns whether one was made now */
  copyDaily(): Promise<boolean>;
  /** Told when a check beside the running work has found damage. */
  setDamage(what: string): void;
  /** Lets running work end, closes the database, frees the folder. */
  close(): Promise<void>;
}

const openServices = (): { services: Services; close: () => Promise<void> } => {
  const open = new Map<string, { close(): Promise<void> | void }>();
  return {
    services: {
      get: <T extends { close(): Promise<void> | void }>(name: string, make: () => T): T => {
        const known = open.get(name);
        if (known) return known as T;
        const fresh = make();
        open.set(name, fresh);
        return fresh;
      },
    },
    close: async () => {
      for (const service of open.values()) await service.close();
    },
  };
};

const localZone = (): string => {
  const east = -new Date().getTimezoneOffset();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${east < 0 ? '-' : '+'}${two(Math.floor(Math.abs(east) / 60))}:${two(Math.abs(east) % 60)}`;
};

/**
 * Opens a data folder: the one way in for window, command line and tests alike.
 *
 * @throws AppError 'folder-held', 'folder-newer', 'folder-damaged', 'folder-unwritable', 'disk-full', 'not-found' (read-only, no record there)
 */
export const openRecorder = (options: RecorderOptions): Recorder => {
  const { dataFolder, clock = Date.now, newId = uuidv7, emit = () => {}, readOnly = false } = options;
  if (readOnly && !existsSync(databaseFile(dataFolder)))
    throw new AppError('not-found', { record: 'folder', id: dataFolder });
  if (!readOnly) makeFolder(dataFolder);
  const letGo = readOnly
    ? () => {}
    : holdFolder(dataFolder, { program: options.program, pid: process.pid, sinceMs: clock() });
  let sqlite: Database.Database;
  try {
    sqlite = readOnly
      ? openForReading(dataFolder)
      : openForWriting(dataFolder, (before) => copyBeforeMigration(before, dataFolder, clock()));
  } catch (error) {
    letGo();
    throw error;
  }
  const db = connect(sqlite);
  if (!readOnly) {
    beginShop(db, localZone());
    makeIndex(db);
  }
  const { services, close: closeServices } = openServices();
  const tokens = new Tokens();
  const running = new Set<Promise<void>>();
  let damage: string | null = null;

  const dispatch = makeDispatcher({
    db,
    handlers,
    readOnly,
    log: readOnly
      ? () => {}
      : (line) => appendFileSync(join(dataFolder, 'recorder.log'), `${new Date(clock()).toISOString()} ${line}\n`),
    base: {
      db,
      dataFolder,
      clock,
      zoneOffsetMin: () => zoneMinutes(shopRow(db).time_zone),
      newId,
      emit,
      tokens,
      personId: () => shopRow(db).person_id,
      damage: () => damage,
      background: (work) => {
        const tracked = work.finally(() => running.delete(tracked));
        running.add(tracked);
      },
      services,
    },
  });

  return {
    db,
    dataFolder,
    services,
    dispatch,
    call: async (name, input) => orThrow(await dispatch('command-line', name, input)) as never,
    offer: (offer) => tokens.offer(offer),
    copyDaily: () => {
      const today = isoDayAt(clock(), zoneMinutes(shopRow(db).time_zone));
      return makeDailyCopy(sqlite, dataFolder, today);
    },
    setDamage: (what) => {
      damage = what;
      emit({ event: 'damage', what });
    },
    close: async () => {
      // Closing the services stops what still runs; it is waited for before the database goes.
      await closeServices();
      await Promise.allSettled(running);
      sqlite.close();
      letGo();
    },
  };
};

const makeFolder = (dataFolder: string): void => {
  try {
    mkdirSync(dataFolder, { recursive: true });
  } catch (cause) {
    throw new AppError(
      'folder-unwritable',
      { reason: cause instanceof Error ? cause.message : String(cause) },
      { cause },
    );
  }
};
