import { Memory } from '../memory.ts';

type AnyRow = Readonly<Record<string, unknown>> & { readonly id: string };

const saysTheSame = (a: AnyRow, b: AnyRow): boolean => Object.keys(b).every((column) => a[column] === b[column]);

/**
 * Reads a row into a record, and again only once the row says something else: a visit is read after every tap, and most of
 * its rows are as they were. The same object comes back until then, so nobody may change it, and what is computed from it
 * can be kept beside it.
 *
 * @param most  how many records are kept
 */
export const readOnce = <Row extends { readonly id: string }, Read extends object>(
  most: number,
  read: (row: Row) => Read,
): ((row: Row) => Read) => {
  const kept = new Memory<{ row: Row; record: Read }>(most);
  return (row) => {
    const held = kept.get(row.id, () => ({ row, record: read(row) }));
    if (!saysTheSame(held.row as AnyRow, row as AnyRow)) {
      held.record = read(row);
      held.row = row;
    }
    return held.record;
  };
};
