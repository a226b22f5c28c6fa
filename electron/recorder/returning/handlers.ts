import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { CheckedInputOf } from '../../../shared-lib/contract/operations.ts';
import { formatPath } from '../../../shared-lib/parts/format-location.ts';
import { parseLocation } from '../../../shared-lib/parts/parse-location.ts';
import { type AnswerKind, standsAgain } from '../../../shared-lib/returning/answer.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import { carryFinding } from '../findings/carry.ts';
import { visitLayout } from '../findings/places.ts';
import { findingById, locationRows } from '../findings/queries.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { issuedSince } from '../reports/queries.ts';
import { visitsOf } from '../visits/queries.ts';
import { answerRow, rowToAnswer, tracking } from './queries.ts';
import { returnToVisit } from './return-of-visit.ts';

type AnswerInput = CheckedInputOf<'return.answer'>;

/** The earlier finding, of an earlier visit of the same machine. @throws AppError 'not-found', 'finding-of-another-visit' */
const earlierFinding = (context: Context, writer: RecordWriter, { visitId, findingId }: AnswerInput) => {
  const { visit } = visitLayout(context, visitId);
  writer.about({ visitId, machineId: visit.machine_id });
  const finding = findingById(context.db, findingId);
  if (!finding) throw new AppError('not-found', { record: 'finding', id: findingId }, { field: 'findingId' });
  const order = visitsOf(context.db, visit.machine_id).map(({ id }) => id);
  const then = order.indexOf(finding.visitId);
  if (then < 0 || then >= order.indexOf(visitId))
    throw new AppError('finding-of-another-visit', {}, { field: 'findingId' });
  return { finding, machineId: visit.machine_id };
};

/** The finding of this visit that goes on with the old one, made, joined or taken out of the bin. */
const takeUp = (context: Context, writer: RecordWriter, input: AnswerInput, number: number): string => {
  const { visitId, findingId, asFindingId } = input;
  const there = tracking(context.db, visitId, findingId);
  const joined = asFindingId ?? there[0]?.id;
  if (joined === undefined) return carryFinding(context, writer, { visitId, findingId }).id;
  const row = writer.row('finding', joined);
  if (row.visit_id !== visitId) throw new AppError('finding-of-another-visit', {}, { field: 'asFindingId' });
  for (const other of there)
    if (other.id !== joined && other.binned === 0) writer.update('finding', other.id, { binned: 1 });
  // Its number is the condition's, for life.
  writer.update('finding', joined, { track_of: findingId, number, binned: 0 });
  return joined;
};

/** What nobody looked at again is not confirmed by what was seen then. */
const stateNow = (answer: AnswerKind, then: Tables['finding']['state']): Tables['finding']['state'] =>
  answer === 'not-re-examined' && then === 'confirmed' ? 'suspected' : then;

const setAside = ({ db }: Context, writer: RecordWriter, { visitId, findingId }: AnswerInput): void => {
  for (const row of tracking(db, visitId, findingId)) {
    if (row.binned === 1) continue;
    if (issuedSince(db, visitId, row.created_at_ms)) throw new AppError('issued', {});
    writer.update('finding', row.id, { binned: 1 });
  }
};

/** Notes what was fitted, once: an answer that is given again changes its own part. */
const fitPart = (
  context: Context,
  writer: RecordWriter,
  {
    input,
    machineId,
    there,
  }: { readonly input: AnswerInput; readonly machineId: string; readonly there: string | null },
): string | null => {
  const { answer, part, visitId, findingId } = input;
  const [place] = locationRows(context.db, findingId);
  if (answer !== 'part-replaced' || part === undefined || place === undefined) return null;
  if (there !== null) {
    writer.update('fitted_part', there, { kind: part });
    return there;
  }
  const id = context.newId();
  writer.insert('fitted_part', {
    id,
    machine_id: machineId,
    path: formatPath(parseLocation(place.place).path),
    kind: part,
    fitted_visit_id: visitId,
    fitted_hours: null,
    removed_visit_id: null,
    removed_hours: null,
  });
  return id;
};

export const returnHandlers: Handlers = {
  'return.get': { read: ({ db }, { visitId }) => returnToVisit(db, visitId) },
  'return.answer': {
    change: (context, writer, input) => {
      const { visitId, findingId, answer, because } = input;
      const { finding: old, machineId } = earlierFinding(context, writer, input);
      const there = answerRow(context.db, visitId, findingId);
      const partBefore = there?.fitted_part_id ?? null;
      const fittedPartId = fitPart(context, writer, { input, machineId, there: partBefore });
      const columns = { answer, because, fitted_part_id: fittedPartId, answered_at_ms: context.clock() };
      const id = there?.id ?? context.newId();
      if (there) writer.update('return_answer', id, columns);
      else writer.insert('return_answer', { id, visit_id: visitId, finding_id: findingId, ...columns });
      if (partBefore !== null && fittedPartId === null) writer.remove('fitted_part', partBefore);
      const row = rowToAnswer(writer.row('return_answer', id) as unknown as Tables['return_answer']);
      if (!standsAgain.has(answer)) {
        setAside(context, writer, input);
        return { answer: row, finding: null };
      }
      const takenUp = takeUp(context, writer, input, old.number);
      const now = findingById(context.db, takenUp);
      if (now && input.asFindingId === undefined && now.state !== stateNow(answer, old.state))
        writer.update('finding', takenUp, { state: stateNow(answer, old.state) });
      return { answer: row, finding: findingById(context.db, takenUp) ?? null };
    },
  },
};
