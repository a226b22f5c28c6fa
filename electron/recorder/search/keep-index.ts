import type { WritableDb } from '../database/connection.ts';
import type { RowChange } from '../journal/change.ts';
import { rowOf } from '../journal/queries.ts';
import { machinesOfOwner } from '../machines/queries.ts';
import { allDocuments, findingDocument, machineDocument, visitDocument } from './documents.ts';
import { dropDocument, isIndexed, putDocument, type SearchDocument } from './queries.ts';

const columnOf = (db: WritableDb, { table, id, ...change }: RowChange, column: string): string | null => {
  const row = 'added' in change ? change.added : 'removed' in change ? change.removed : rowOf(db, table, id);
  const value = row?.[column];
  return typeof value === 'string' ? value : null;
};

/** Records whose words may have changed with these rows. */
const touched = (db: WritableDb, changes: readonly RowChange[]) => {
  const machines = new Set<string>();
  const visits = new Set<string>();
  const findings = new Set<string>();
  const add = (set: Set<string>, id: string | null) => {
    if (id !== null) set.add(id);
  };
  for (const change of changes) {
    switch (change.table) {
      case 'machine':
        machines.add(change.id);
        break;
      case 'ownership':
      case 'layout':
        add(machines, columnOf(db, change, 'machine_id'));
        break;
      case 'owner':
        for (const { machine_id } of machinesOfOwner(db, change.id)) machines.add(machine_id);
        break;
      case 'visit':
        visits.add(change.id);
        break;
      case 'finding':
        findings.add(change.id);
        break;
      case 'finding_location':
        add(findings, columnOf(db, change, 'finding_id'));
        break;
      default:
    }
  }
  return { machines, visits, findings };
};

const keep = (db: WritableDb, id: string, document: SearchDocument | null): void => {
  if (document) putDocument(db, document);
  else dropDocument(db, id);
};

/** Brings the search up to date with a mutation, inside its transaction: what is saved can be found at once. */
export const keepIndex = (db: WritableDb, changes: readonly RowChange[]): void => {
  const { machines, visits, findings } = touched(db, changes);
  for (const id of machines) keep(db, id, machineDocument(db, id));
  for (const id of visits) keep(db, id, visitDocument(db, id));
  for (const id of findings) keep(db, id, findingDocument(db, id));
};

/** Makes the search of a folder that has records and none yet. */
export const makeIndex = (db: WritableDb): void => {
  if (isIndexed(db)) return;
  db.transaction(() => {
    for (const document of allDocuments(db)) putDocument(db, document);
  });
};
