import type { Tables } from '../database/tables.ts';
import { canonical, sha256 } from './change.ts';

/** What the first entry of a journal carries as its predecessor. */
export const chainStart = '0'.repeat(64);

/** Digest of an entry: all of it but the digest itself, in canonical form, the previous entry's digest included. */
export const entryDigest = (entry: Omit<Tables['journal'], 'digest'>): string => sha256(canonical(entry));

/** The first entry that does not follow from the one before it, or null when the chain holds. */
export const firstBreak = (entries: Iterable<Tables['journal']>): number | null => {
  let previous = chainStart;
  let seq = 0;
  for (const { digest, ...entry } of entries) {
    seq += 1;
    if (entry.seq !== seq || entry.previous_digest !== previous || entryDigest(entry) !== digest) return entry.seq;
    previous = digest;
  }
  return null;
};
