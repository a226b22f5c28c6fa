import type { ReadableDb } from '../database/connection.ts';
import { type Hit, hitsOfSerial, hitsOfWords } from './queries.ts';

/** What was typed as an FTS5 question: every word, the last one as a beginning. Quoted, so that no letter is an operator. */
export const matchOf = (typed: string): string | null => {
  const words = typed.match(/[\p{L}\p{N}]+/gu) ?? [];
  if (words.length === 0) return null;
  return words.map((word, index) => `"${word}"${index === words.length - 1 ? '*' : ''}`).join(' ');
};

/** Three letters are the least that the index of fragments knows; a serial has a figure in it. */
const mayBeSerial = (fragment: string): boolean =>
  fragment.length >= 3 && /\p{N}/u.test(fragment) && !/\s/.test(fragment);

/** The first hits of what was typed. Who types a figure means a serial, if any has it; else every word there is is asked. */
export const find = (db: ReadableDb, typed: string, most = 50): Hit[] => {
  const fragment = typed.trim();
  if (mayBeSerial(fragment)) {
    const serials = hitsOfSerial(db, `"${fragment.replaceAll('"', '""')}"`, most);
    if (serials.length > 0) return serials;
  }
  const match = matchOf(typed);
  return match === null ? [] : hitsOfWords(db, match, most);
};
