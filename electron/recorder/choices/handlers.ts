import { toldOf } from '../../../shared-lib/choices/told.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Layout } from '../../../shared-lib/model/layout.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import { findingById } from '../findings/queries.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { standingOfVisit } from '../visits/stood-visit.ts';
import {
  choiceRow,
  choiceRows,
  choiceStepRows,
  costRows,
  dispositionRows,
  isDecided,
  moneyOf,
  nextPosition,
  rowToChoice,
  rowToDecision,
  rowToStep,
  visitStepRows,
} from './queries.ts';
import { choicesOfVisit } from './visit-choices.ts';

const aboutVisit = (context: Context, writer: RecordWriter, visitId: string): Layout => {
  const { visit, layout } = visitLayout(context, visitId);
  writer.about({ visitId, machineId: visit.machine_id });
  return layout;
};

const placeOrNull = (place: string | null, layout: Layout): string | null =>
  place === null ? null : placeOn(place, layout);

/** A choice that may still change. @throws AppError 'not-found', 'decided' */
const openChoice = (context: Context, writer: RecordWriter, id: string): { visitId: string; layout: Layout } => {
  const visitId = String(writer.row('choice', id).visit_id);
  const layout = aboutVisit(context, writer, visitId);
  if (isDecided(context.db, id)) throw new AppError('decided', {});
  return { visitId, layout };
};

const choiceNow = ({ db }: Context, id: string) => {
  const row = choiceRow(db, id);
  if (!row) throw new AppError('not-found', { record: 'choice', id });
  return rowToChoice(db, row);
};

/** A finding of this very visit, ranked or not. @throws AppError 'not-found', 'finding-of-another-visit' */
const ownFinding = ({ db }: Context, visitId: string, findingId: string) => {
  const finding = findingById(db, findingId);
  if (!finding) throw new AppError('not-found', { record: 'finding', id: findingId }, { field: 'findingId' });
  if (finding.visitId !== visitId) throw new AppError('finding-of-another-visit', {}, { field: 'findingId' });
  const line = standingOfVisit(db, visitId).lines.find((each) => each.findingId === findingId);
  return { finding, tier: line?.tier ?? null };
};

/** A row of a choice's own list. */
const refuseStranger = (row: { readonly choice_id?: unknown }, choiceId: string, record: string): void => {
  if (row.choice_id !== choiceId) throw new AppError('not-found', { record, id: choiceId });
};

export const choiceHandlers: Handlers = {
  'choices.get': { read: ({ db }, { visitId }) => choicesOfVisit(db, visitId) },
  'visitStep.add': {
    change: (context, writer, { visitId, step, at }) => {
      const layout = aboutVisit(context, writer, visitId);
      const position = nextPosition(visitStepRows(context.db, visitId));
      const row = { id: context.newId(), visit_id: visitId, position, step, place: placeOrNull(at, layout) };
      writer.insert('visit_step', row);
      return rowToStep(row);
    },
  },
  'visitStep.remove': {
    change: (context, writer, { id }) => {
      aboutVisit(context, writer, String(writer.row('visit_step', id).visit_id));
      writer.remove('visit_step', id);
      return null;
    },
  },
  'money.set': {
    change: (context, writer, { visitId, ...given }) => {
      aboutVisit(context, writer, visitId);
      // What was decided on was read out with its money.
      if (choiceRows(context.db, visitId).some(({ id }) => isDecided(context.db, id)))
        throw new AppError('decided', {});
      const before = moneyOf(context.db, visitId);
      const { currency = before.currency, taxPercent = before.taxPercent } = given;
      const columns = { currency, tax_percent: taxPercent };
      if (writer.has('visit_money', visitId)) writer.update('visit_money', visitId, columns);
      else writer.insert('visit_money', { id: visitId, ...columns });
      return { currency, taxPercent };
    },
  },
  'choice.add': {
    change: (context, writer, { visitId, name, conditions, holdPoints }) => {
      aboutVisit(context, writer, visitId);
      const id = context.newId();
      const position = nextPosition(choiceRows(context.db, visitId));
      writer.insert('choice', { id, visit_id: visitId, position, name, conditions, hold_points: holdPoints });
      return choiceNow(context, id);
    },
  },
  'choice.change': {
    change: (context, writer, { id, name, conditions, holdPoints }) => {
      openChoice(context, writer, id);
      writer.update('choice', id, { name, conditions, hold_points: holdPoints });
      return choiceNow(context, id);
    },
  },
  'choice.remove': {
    change: (context, writer, { id }) => {
      openChoice(context, writer, id);
      for (const row of dispositionRows(context.db, id)) writer.remove('disposition', row.id);
      for (const row of choiceStepRows(context.db, id)) writer.remove('choice_step', row.id);
      for (const row of costRows(context.db, id)) writer.remove('cost_line', row.id);
      writer.remove('choice', id);
      return null;
    },
  },
  'choice.dispose': {
    change: (context, writer, { id, findingId, is, after, why }) => {
      const { visitId } = openChoice(context, writer, id);
      if (ownFinding(context, visitId, findingId).tier === null)
        throw new AppError('finding-not-ranked', {}, { field: 'findingId' });
      const columns = { what: is, after: after === null ? null : JSON.stringify(after), why };
      const there = dispositionRows(context.db, id).find((row) => row.finding_id === findingId);
      if (there) writer.update('disposition', there.id, columns);
      else writer.insert('disposition', { id: context.newId(), choice_id: id, finding_id: findingId, ...columns });
      return choiceNow(context, id);
    },
  },
  'choice.addStep': {
    change: (context, writer, { id, step, at }) => {
      const { layout } = openChoice(context, writer, id);
      const position = nextPosition(choiceStepRows(context.db, id));
      const place = placeOrNull(at, layout);
      writer.insert('choice_step', { id: context.newId(), choice_id: id, position, step, place });
      return choiceNow(context, id);
    },
  },
  'choice.removeStep': {
    change: (context, writer, { id, stepId }) => {
      openChoice(context, writer, id);
      refuseStranger(writer.row('choice_step', stepId), id, 'step');
      writer.remove('choice_step', stepId);
      return choiceNow(context, id);
    },
  },
  'choice.addCost': {
    change: (context, writer, { id, ...line }) => {
      openChoice(context, writer, id);
      const position = nextPosition(costRows(context.db, id));
      writer.insert('cost_line', { id: context.newId(), choice_id: id, position, ...line });
      return choiceNow(context, id);
    },
  },
  'choice.changeCost': {
    change: (context, writer, { id, costId, ...line }) => {
      openChoice(context, writer, id);
      refuseStranger(writer.row('cost_line', costId), id, 'line of the cost');
      writer.update('cost_line', costId, line);
      return choiceNow(context, id);
    },
  },
  'choice.removeCost': {
    change: (context, writer, { id, costId }) => {
      openChoice(context, writer, id);
      refuseStranger(writer.row('cost_line', costId), id, 'line of the cost');
      writer.remove('cost_line', costId);
      return choiceNow(context, id);
    },
  },
  'decision.take': {
    change: (context, writer, input) => {
      const { visitId, findingId, choiceId } = input;
      if (input.statement === '') throw new AppError('statement-not-shown', {}, { field: 'statement' });
      aboutVisit(context, writer, visitId);
      if (choiceId !== undefined && writer.row('choice', choiceId).visit_id !== visitId)
        throw new AppError('finding-of-another-visit', {}, { field: 'choiceId' });
      for (const shotId of input.shownShotIds) {
        if (writer.row('shot', shotId).visit_id !== visitId)
          throw new AppError('finding-of-another-visit', {}, { field: 'shownShotIds' });
      }
      const told = findingId === undefined ? null : ownFinding(context, visitId, findingId);
      const row: Tables['decision'] = {
        id: context.newId(),
        visit_id: visitId,
        finding_id: findingId ?? null,
        choice_id: choiceId ?? null,
        decision: input.decision,
        completed: input.completed.trim(),
        words: input.words.trim(),
        decided_by: input.by,
        capacity: input.capacity,
        how_told: input.howTold,
        shown_shots: JSON.stringify(input.shownShotIds),
        statement: input.statement,
        signature: input.signature === null ? null : JSON.stringify(input.signature),
        unsigned_because: input.unsignedBecause.trim(),
        told: told === null ? '{}' : toldOf(told.finding, told.tier),
        decided_at_ms: context.clock(),
        zone_offset_min: context.zoneOffsetMin(),
        person_id: context.personId(),
      };
      writer.insert('decision', row);
      return rowToDecision(row);
    },
  },
};
