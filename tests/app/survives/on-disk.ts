import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import canonicalize from 'canonicalize';
import type { CheckResult } from '../../../electron/recorder/check.ts';
import { project } from '../../support/app/program.ts';

/** What the program's own check says of a data folder, asked as a person would ask it. */
export function checkOf(dataFolder: string): CheckResult {
  const words = [join(project, 'electron/cli/main.ts'), 'check', '--json', '--data', dataFolder];
  try {
    return JSON.parse(execFileSync(process.execPath, words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] }));
  } catch (error) {
    // It ends with a number of its own when it has found something, and has said what.
    const { stdout } = error as { stdout?: string };
    if (stdout === undefined || stdout === '') throw error;
    return JSON.parse(stdout);
  }
}

/**
 * The number of the first journal entry that does not follow from the one before it, or null. Counted here with
 * nothing of the program's: RFC 8785 by its reference library, SHA-256 by the system.
 */
export function brokenEntryOf(dataFolder: string): number | null {
  const sqlite = new Database(join(dataFolder, 'record.sqlite'), { readonly: true });
  try {
    let previous = '0'.repeat(64);
    let seq = 0;
    for (const row of sqlite.prepare('SELECT * FROM journal ORDER BY seq').iterate()) {
      const { digest, ...entry } = row as Record<string, unknown>;
      seq += 1;
      const own = createHash('sha256')
        .update(canonicalize(entry) ?? '')
        .digest('hex');
      if (entry.seq !== seq || entry.previous_digest !== previous || own !== digest) return seq;
      previous = own;
    }
    return null;
  } finally {
    sqlite.close();
  }
}

/** Whether nobody holds the folder: its lock can be taken, and is let go at once. */
export function isFree(dataFolder: string): boolean {
  const lock = new Database(join(dataFolder, 'hold.sqlite'), { timeout: 0, fileMustExist: true });
  try {
    lock.exec('BEGIN EXCLUSIVE');
    return true;
  } catch (error) {
    if ((error as { code?: string }).code !== 'SQLITE_BUSY') throw error;
    return false;
  } finally {
    lock.close();
  }
}
