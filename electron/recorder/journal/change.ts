import { createHash } from 'node:crypto';
import canonicalizeModule from 'canonicalize';
import type { RecordTable } from '../database/tables.ts';

export type Cell = string | number | null;
export type Row = Readonly<Record<string, Cell>>;

/** One row's part of a mutation. Personal rows stand as digests: enough to prove, nothing to read. */
export type RowChange =
  | { readonly table: RecordTable; readonly id: string; readonly added: Row }
  | { readonly table: RecordTable; readonly id: string; readonly removed: Row }
  | {
      readonly table: RecordTable;
      readonly id: string;
      readonly updated: Readonly<Record<string, readonly [Cell, Cell]>>;
    }
  | {
      readonly table: RecordTable;
      readonly id: string;
      readonly personal: { readonly before: string | null; readonly after: string | null };
    };

// The package is CommonJS in its types and ESM at run time; both ways of importing give the function.
const canonicalize = canonicalizeModule as unknown as (value: unknown) => string | undefined;

export const canonical = (value: unknown): string => {
  const text = canonicalize(value);
  if (text === undefined) throw new Error('value has no canonical form');
  return text;
};

export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

export const rowDigest = (row: Row): string => sha256(canonical(row));

/** The columns that differ, as from and to; empty when nothing does. Undefined means: not named. */
export const difference = (
  before: Row,
  after: Readonly<Record<string, Cell | undefined>>,
): Record<string, readonly [Cell, Cell]> => {
  const columns: Record<string, readonly [Cell, Cell]> = {};
  for (const [column, value] of Object.entries(after)) {
    if (value === undefined) continue;
    const old = before[column] ?? null;
    if (!Object.is(old, value)) columns[column] = [old, value];
  }
  return columns;
};

/**
 * The change that takes a change back. Reversing twice gives the first again.
 *
 * @throws Error for a personal row: the journal does not hold what would have to be restored
 */
export const reversed = (change: RowChange): RowChange => {
  const { table, id } = change;
  if ('added' in change) return { table, id, removed: change.added };
  if ('removed' in change) return { table, id, added: change.removed };
  if ('personal' in change) throw new Error('a personal row cannot be restored from the journal');
  const updated: Record<string, readonly [Cell, Cell]> = {};
  for (const [column, [from, to]] of Object.entries(change.updated)) updated[column] = [to, from];
  return { table, id, updated };
};
