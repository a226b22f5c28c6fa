import type { ReadableDb } from '../database/connection.ts';
import { type Hit, hitsOfSerial, hitsOfWords } from './queries.ts';

/** What was typed as an FTS5 question: every word, the last one as a beginning. Quoted, so that no letter is an operator. */
export const matchOf = (typed: string): string | null => {
  const words = typed.match(/[\p{L}\p{N}]+/gu) ?? [];
  if (words.length === 0) return null;
  return words.map((word, index) => `"${word}"${index === words.length - 1 ? '*' : ''}`).join(' ');
};

/** The first hits of what was typed: serials by fragment first, since who types a number knows the machine. */
export const find = (db: ReadableDb, typed: string, most = 50): Hit[] => {
  const match = matchOf(typed);
  const fragment = typed.trim();
  const serials = fragment.length >= 3 ? hitsOfSerial(db, `"${fragment.replaceAll('"', '""')}"`, most) : [];
  const words = match === null ? [] : hitsOfWords(db, match, most);
  return [...serials, ...words].slice(0, most);
};
