import { saysAnything } from '../../../shared-lib/choices/choices-of.ts';
import type { VisitChoices } from '../../../shared-lib/contract/choices.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { ReturnView } from '../../../shared-lib/contract/returning.ts';
import type { Standing } from '../../../shared-lib/contract/standing.ts';
import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';
import type { VisitWork } from '../../../shared-lib/contract/work.ts';
import { type StandingInput, standingOf } from '../../../shared-lib/ranking/standing.ts';
import { saysWork, workOf } from '../../../shared-lib/work/work-of.ts';
import { choiceRows, decisionRows, rowToChoice, rowToDecision } from '../choices/queries.ts';
import { visitChoices } from '../choices/visit-choices.ts';
import { keptComparisons } from '../comparisons/then-and-now.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { findingsOf, linksOf, proofsOf, rowToLink, rowToProof } from '../findings/queries.ts';
import { intakeOf, saysAnythingOfIntake } from '../intake/queries.ts';
import {
  fittedPartsOf,
  layoutsById,
  machineById,
  metersOf,
  ownerNow,
  rowToLayout,
  rowToMachine,
} from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { calibrationsOf, marksOf } from '../marks/queries.ts';
import { planesNow, sizesNow } from '../measuring/sizes-now.ts';
import { shotsOf } from '../photos/queries.ts';
import { readingNow } from '../readings/compute-reading.ts';
import { instrumentById, readingsOf, rowToInstrument } from '../readings/queries.ts';
import { returnOfVisit, type StoodVisit } from '../returning/return-of-visit.ts';
import { shopRow } from '../shop/queries.ts';
import { handOverOf, workItemsOf } from '../work/queries.ts';
import { rowToScopeItem, rowToVisit, scopeOf, visitById, visitsOf } from './queries.ts';

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

/** @throws AppError 'not-found' */
const stoodVisit = (db: ReadableDb, visitId: string): StoodVisit => {
  const row = visitRow(db, visitId);
  const input = standingInputs(db, [row]).get(row.id);
  if (!input) throw new Error(`visit ${row.id} was not loaded`);
  return { row, input, standing: standingOf(input) };
};

/** @throws AppError 'not-found' */
export const standingOfVisit = (db: ReadableDb, visitId: string): Standing => stoodVisit(db, visitId).standing;

/** The machine's visits before this one, oldest first, each with its standing. */
const earlierVisits = (db: ReadableDb, row: Tables['visit']): StoodVisit[] => {
  const all = visitsOf(db, row.machine_id);
  const before = all.slice(
    0,
    Math.max(
      0,
      all.findIndex(({ id }) => id === row.id),
    ),
  );
  const inputs = standingInputs(db, before);
  return before.flatMap((visit) => {
    const loaded = inputs.get(visit.id);
    return loaded ? [{ row: visit, input: loaded, standing: standingOf(loaded) }] : [];
  });
};

/** What earlier visits left, and what has become of it. @throws AppError 'not-found' */
export const returnToVisit = (db: ReadableDb, visitId: string): ReturnView | null => {
  const now = stoodVisit(db, visitId);
  return returnOfVisit(db, now, earlierVisits(db, now.row));
};

type WrittenWork = Pick<VisitWork, 'items' | 'handOver'>;

const writtenWork = (db: ReadableDb, visitId: string): WrittenWork => ({
  items: workItemsOf(db, visitId),
  handOver: handOverOf(db, visitId),
});

const workNow = (db: ReadableDb, { row, input, standing }: StoodVisit, written: WrittenWork): VisitWork =>
  workOf({
    input,
    standing,
    ...written,
    choices: choiceRows(db, row.id).map((choice) => rowToChoice(db, choice)),
    decisions: decisionRows(db, row.id).map(rowToDecision),
  });

/** The work that was done, against the choice that was taken. @throws AppError 'not-found' */
export const workOfVisit = (db: ReadableDb, visitId: string): VisitWork =>
  workNow(db, stoodVisit(db, visitId), writtenWork(db, visitId));

/** What was suspected, what can be chosen, and what was decided. @throws AppError 'not-found' */
export const choicesOfVisit = (db: ReadableDb, visitId: string): VisitChoices => {
  const now = stoodVisit(db, visitId);
  return visitChoices(db, { ...now, earlier: earlierVisits(db, now.row) });
};

/** Everything of one visit. @throws AppError 'not-found' */
export const visitRecord = (db: ReadableDb, visitId: string): VisitRecord => {
  const now = stoodVisit(db, visitId);
  const { row, input, standing } = now;
  const earlier = earlierVisits(db, row);
  const visit = rowToVisit(row);
  const machine = machineById(db, row.machine_id);
  const layout = layoutsById(db, [row.layout_id])[0];
  if (!machine || !layout) throw new Error(`visit ${visitId} has no machine or layout`);
  const meters = metersOf(db, row.machine_id);
  const choices = visitChoices(db, { ...now, earlier });
  const before = returnOfVisit(db, now, earlier);
  const written = writtenWork(db, visitId);
  const used = new Set(input.readings.flatMap(({ instrumentId }) => instrumentId ?? []));
  const instruments = [...used].flatMap((id) => {
    const instrument = instrumentById(db, id);
    return instrument ? [rowToInstrument(instrument)] : [];
  });
  const fittedParts = fittedPartsOf(db, row.machine_id);
  const shots = shotsOf(db, visitId);
  const marks = marksOf(db, visitId);
  const calibrations = planesNow(calibrationsOf(db, visitId));
  const intake = intakeOf(db, visitId);
  const comparisons = keptComparisons(db, visitId, standingOfVisit);
  return {
    visit,
    machine: rowToMachine(machine),
    layout: rowToLayout(layout),
    owner: ownerNow(db, row.machine_id),
    meters,
    trueHours: trueHours(visit.meter, meters),
    scope: input.scope,
    shots,
    marks,
    calibrations,
    sizes: sizesNow({ marks, shots, calibrations, findings: input.findings }),
    findings: input.findings,
    links: input.links,
    proofs: input.proofs,
    readings: input.readings.map((reading) =>
      readingNow(db, reading, { conditions: visit.conditions, volts: input.layout.volts }),
    ),
    standing,
    ...(saysAnything(choices) ? { choices } : {}),
    ...(saysAnythingOfIntake(intake) ? { intake } : {}),
    ...(comparisons.length > 0 ? { comparisons } : {}),
    ...(before === null ? {} : { before }),
    ...(saysWork(written) ? { work: workNow(db, now, written) } : {}),
    ...(instruments.length > 0 ? { instruments } : {}),
    ...(fittedParts.length > 0 ? { fittedParts } : {}),
  };
};
