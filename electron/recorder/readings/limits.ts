import type { TypedLimit } from '../../../shared-lib/model/reading.ts';
import type { Context } from '../context.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { limitRow } from './queries.ts';

/** Keeps a limit for the machine, or forgets it. */
export const rememberLimit = (
  { db, newId }: Pick<Context, 'db' | 'newId'>,
  writer: RecordWriter,
  machineId: string,
  sheet: string,
  result: string,
  limit: TypedLimit | null,
): void => {
  const there = limitRow(db, machineId, sheet, result);
  if (limit === null) {
    if (there) writer.remove('remembered_limit', there.id);
    return;
  }
  const typed = JSON.stringify(limit);
  if (there) writer.update('remembered_limit', there.id, { typed });
  else writer.insert('remembered_limit', { id: newId(), machine_id: machineId, sheet, result, typed });
};

/** Those that belong to the machine; a common-practice figure is the sheet's own. */
export const isMachines = ({ source }: TypedLimit): boolean => source === 'maker' || source === 'machine-shop';
