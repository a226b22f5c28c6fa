import { saysAnything } from '../../../shared-lib/choices/choices-of.ts';
import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';
import { visitChoices } from '../choices/visit-choices.ts';
import { keptComparisons } from '../comparisons/then-and-now.ts';
import type { ReadableDb } from '../database/connection.ts';
import { intakeOf, saysAnythingOfIntake } from '../intake/queries.ts';
import {
  fittedPartsOf,
  layoutById,
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
import { instrumentById, rowToInstrument } from '../readings/queries.ts';
import { returnOfVisit } from '../returning/return-of-visit.ts';
import { workIfAny } from '../work/visit-work.ts';
import { rowToVisit } from './queries.ts';
import { visitAndEarlier } from './stood-visit.ts';

/** Everything of one visit. @throws AppError 'not-found' */
export const visitRecord = (db: ReadableDb, visitId: string): VisitRecord => {
  const visits = visitAndEarlier(db, visitId);
  const { now } = visits;
  const { row, input, standing } = now;
  const visit = rowToVisit(row);
  const machine = machineById(db, row.machine_id);
  const layout = layoutById(db, row.layout_id);
  if (!machine || !layout) throw new Error(`visit ${visitId} has no machine or layout`);
  const meters = metersOf(db, row.machine_id);
  const work = workIfAny(db, now);
  const choices = visitChoices(db, visits, work);
  const before = returnOfVisit(db, visits);
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
  const comparisons = keptComparisons(db, visits);
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
    ...(work === null ? {} : { work }),
    ...(instruments.length > 0 ? { instruments } : {}),
    ...(fittedParts.length > 0 ? { fittedParts } : {}),
  };
};
