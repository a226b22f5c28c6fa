import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Standing } from '../../../shared-lib/contract/standing.ts';
import { type StandingInput, standingOf } from '../../../shared-lib/ranking/standing.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { findingsOf, linksOf, proofsOf, rowToLink, rowToProof } from '../findings/queries.ts';
import { layoutsById, rowToLayout } from '../machines/queries.ts';
import { readingsOf } from '../readings/queries.ts';
import { shopRow } from '../shop/queries.ts';
import { rowToScopeItem, rowToVisit, scopeOf, visitById, visitsOf } from './queries.ts';

/** A visit with its ranked list, and what that was made of. */
export interface StoodVisit {
  readonly row: Tables['visit'];
  readonly input: StandingInput;
  readonly standing: Standing;
}

/** A visit and the machine's visits before it, oldest first. */
export interface VisitAndEarlier {
  readonly now: StoodVisit;
  readonly earlier: readonly StoodVisit[];
}

/** All that the standing of each visit needs, loaded for many visits at once: the floor shows a thousand machines. */
export const standingInputs = (db: ReadableDb, rows: readonly Tables['visit'][]): Map<string, StandingInput> => {
  const ids = rows.map(({ id }) => id);
  const layouts = new Map(
    layoutsById(db, [...new Set(rows.map((row) => row.layout_id))]).map((row) => [row.id, rowToLayout(row).layout]),
  );
  const findings = findingsOf(db, ids);
  const links = Map.groupBy(linksOf(db, ids), (row) => row.visit_id);
  const proofs = Map.groupBy(proofsOf(db, ids), (row) => row.visit_id);
  const scope = Map.groupBy(scopeOf(db, ids), (row) => row.visit_id);
  const readings = readingsOf(db, ids);
  const units = shopRow(db).units;
  return new Map(
    rows.map((row) => {
      const layout = layouts.get(row.layout_id);
      if (!layout) throw new Error(`visit ${row.id} has no layout`);
      return [
        row.id,
        {
          visit: rowToVisit(row),
          layout,
          findings: findings.get(row.id) ?? [],
          links: (links.get(row.id) ?? []).map(rowToLink),
          proofs: (proofs.get(row.id) ?? []).map(rowToProof),
          scope: (scope.get(row.id) ?? []).map(rowToScopeItem),
          readings: readings.get(row.id) ?? [],
          units,
        },
      ];
    }),
  );
};

const visitRow = (db: ReadableDb, id: string): Tables['visit'] => {
  const row = visitById(db, id);
  if (!row) throw new AppError('not-found', { record: 'visit', id });
  return row;
};

const stood = (db: ReadableDb, rows: readonly Tables['visit'][]): StoodVisit[] => {
  const inputs = standingInputs(db, rows);
  return rows.map((row) => {
    const input = inputs.get(row.id);
    if (!input) throw new Error(`visit ${row.id} was not loaded`);
    return { row, input, standing: standingOf(input) };
  });
};

/** @throws AppError 'not-found' */
export const stoodVisit = (db: ReadableDb, visitId: string): StoodVisit => {
  const [now] = stood(db, [visitRow(db, visitId)]);
  if (!now) throw new Error(`visit ${visitId} was not loaded`);
  return now;
};

/** @throws AppError 'not-found' */
export const standingOfVisit = (db: ReadableDb, visitId: string): Standing => stoodVisit(db, visitId).standing;

/** @throws AppError 'not-found' */
export const visitAndEarlier = (db: ReadableDb, visitId: string): VisitAndEarlier => {
  const all = visitsOf(db, visitRow(db, visitId).machine_id);
  const visits = stood(db, all.slice(0, all.findIndex(({ id }) => id === visitId) + 1));
  const now = visits.at(-1);
  if (!now) throw new Error(`visit ${visitId} was not loaded`);
  return { now, earlier: visits.slice(0, -1) };
};
