import type { ReadableDb } from './database/connection.ts';
import { damageIn } from './database/open.ts';
import { firstBreak } from './journal/chain.ts';
import { entriesFrom } from './journal/queries.ts';
import { originalDigests } from './photos/queries.ts';
import { verifyOriginal } from './photos/verify-original.ts';

export interface CheckResult {
  readonly journalEntries: number;
  readonly originals: number;
  /** What is wrong, each in a sentence; empty when nothing is. */
  readonly problems: readonly string[];
}

const pageSize = 2_000;

/** The journal's entries in pages, so that a long life fits into memory. */
function* allEntries(db: ReadableDb) {
  let seq = 0;
  while (true) {
    const page = entriesFrom(db, seq, pageSize);
    yield* page;
    const last = page.at(-1);
    if (!last) return;
    seq = last.seq;
  }
}

/** The whole record held against itself: database, journal chain, and every original's bytes against its digest. */
export const checkRecord = async (
  { db, dataFolder }: { db: ReadableDb; dataFolder: string },
  onOriginal: (done: number, of: number) => void = () => {},
): Promise<CheckResult> => {
  const problems: string[] = [];
  const damage = damageIn(dataFolder, 'integrity_check');
  if (damage) problems.push(`The database is damaged: ${damage}.`);
  let journalEntries = 0;
  const counted = function* () {
    for (const entry of allEntries(db)) {
      journalEntries += 1;
      yield entry;
    }
  };
  const broken = firstBreak(counted());
  if (broken !== null)
    problems.push(
      `The journal does not follow from itself at entry ${broken}: something was changed outside the program.`,
    );
  const originals = originalDigests(db);
  for (const [index, { digest }] of originals.entries()) {
    const found = await verifyOriginal(dataFolder, digest);
    if (found === 'missing') problems.push(`The photo ${digest.slice(0, 12)} is missing from the folder.`);
    if (found === 'altered') problems.push(`The photo ${digest.slice(0, 12)} is not the one that was taken in.`);
    onOriginal(index + 1, originals.length);
  }
  return { journalEntries, originals: originals.length, problems };
};
