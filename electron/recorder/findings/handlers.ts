import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Finding, LinkEvidence } from '../../../shared-lib/model/finding.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { issuedSince } from '../reports/queries.ts';
import { shopRow } from '../shop/queries.ts';
import { standingOfVisit } from '../visits/stood-visit.ts';
import { carryFinding } from './carry.ts';
import { refuseImpossibleCause, refuseImpossibleLinks, refuseThereBeforeAbsent } from './cause-timing.ts';
import { emptyFinding, findingColumns } from './fields.ts';
import { setPlaces, visitLayout } from './places.ts';
import { typedQuantities } from './quantities-from-marks.ts';
import {
  findingById,
  lastUsedAction,
  lastUsedDefects,
  linkBetween,
  locationRows,
  nextNumber,
  rowToLink,
} from './queries.ts';
import { showFinding } from './show-finding.ts';

/** The finding, with its visit's machine named as what the change is about. @throws AppError 'not-found' */
const findingAbout = (context: Context, writer: RecordWriter, id: string): Finding => {
  const finding = findingById(context.db, id);
  if (!finding) throw new AppError('not-found', { record: 'finding', id });
  const { visit } = visitLayout(context, finding.visitId);
  writer.about({ visitId: visit.id, machineId: visit.machine_id });
  return finding;
};

const again = ({ db }: Context, id: string): Finding => {
  const finding = findingById(db, id);
  if (!finding) throw new AppError('not-found', { record: 'finding', id });
  return finding;
};

/** A conclusion may be edited until it appears in an issued report; after that it is only superseded. */
const refuseIssued = ({ db }: Context, finding: Finding): void => {
  if (issuedSince(db, finding.visitId, finding.createdAtMs)) throw new AppError('issued', { number: finding.number });
};

/** A link rests on what belongs to the same visit. @throws AppError 'not-found', 'finding-of-another-visit' */
const refuseForeignEvidence = (writer: RecordWriter, visitId: string, shownBy: readonly LinkEvidence[]): void => {
  for (const by of shownBy) {
    const row = 'readingId' in by ? writer.row('reading', by.readingId) : writer.row('finding', by.findingId);
    if (row.visit_id !== visitId) throw new AppError('finding-of-another-visit', {}, { field: 'shownBy' });
  }
};

export const findingHandlers: Handlers = {
  'finding.add': {
    change: (context, writer, { visitId, markId, shotId, readingId, trackOf, quantities, ...fields }) => {
      const { visit, layout } = visitLayout(context, visitId);
      writer.about({ visitId, machineId: visit.machine_id });
      const id = context.newId();
      const number = trackOf === undefined ? nextNumber(context.db, visit.machine_id) : again(context, trackOf).number;
      writer.insert('finding', { ...emptyFinding(id, visitId, number, context.clock()), track_of: trackOf ?? null });
      const { units } = shopRow(context.db);
      const typed = typedQuantities(context, quantities, units);
      writer.update('finding', id, findingColumns({ ...fields, quantities: typed }, { quantities: {} }, units));
      setPlaces(context, writer, id, fields.locations ?? [], layout);
      if (markId !== undefined) {
        writer.update('mark', markId, { finding_id: id });
        showFinding(context, writer, id, { shotId: String(writer.row('mark', markId).shot_id) });
      }
      if (shotId !== undefined) showFinding(context, writer, id, { shotId });
      if (readingId !== undefined) showFinding(context, writer, id, { readingId });
      return again(context, id);
    },
  },
  'finding.change': {
    change: (context, writer, { id, quantities, ...fields }) => {
      const before = findingAbout(context, writer, id);
      refuseIssued(context, before);
      const { units } = shopRow(context.db);
      const typed = typedQuantities(context, quantities, units);
      writer.update('finding', id, findingColumns({ ...fields, quantities: typed }, before, units));
      if (fields.locations)
        setPlaces(context, writer, id, fields.locations, visitLayout(context, before.visitId).layout);
      if (fields.noticedOn || fields.absentOn)
        refuseThereBeforeAbsent(again(context, id), fields.absentOn ? 'absentOn' : 'noticedOn');
      for (const field of ['noticedOn', 'absentOn', 'foundOn'] as const)
        if (fields[field]) refuseImpossibleLinks(context, again(context, id), field);
      return again(context, id);
    },
  },
  'finding.bin': {
    change: (context, writer, { id }) => {
      refuseIssued(context, findingAbout(context, writer, id));
      writer.update('finding', id, { binned: 1 });
      return null;
    },
  },
  'finding.restore': {
    change: (context, writer, { id }) => {
      findingAbout(context, writer, id);
      writer.update('finding', id, { binned: 0 });
      return null;
    },
  },
  'finding.supersede': {
    change: (context, writer, { id, because }) => {
      const before = findingAbout(context, writer, id);
      const { visit, layout } = visitLayout(context, before.visitId);
      const newId = context.newId();
      const empty = emptyFinding(newId, visit.id, nextNumber(context.db, visit.machine_id), context.clock());
      writer.insert('finding', { ...empty, kind: before.kind, supersedes: id, superseded_because: because });
      setPlaces(
        context,
        writer,
        newId,
        locationRows(context.db, id).map(({ place }) => place),
        layout,
      );
      return again(context, newId);
    },
  },
  'finding.link': {
    change: (context, writer, input) => {
      if (input.fromId === input.toId) throw new AppError('link-to-itself', {});
      const from = findingAbout(context, writer, input.fromId);
      const to = again(context, input.toId);
      if (to.visitId !== from.visitId) throw new AppError('finding-of-another-visit', {});
      if (linkBetween(context.db, input.fromId, input.toId)) throw new AppError('link-exists', {});
      refuseImpossibleCause(context, from, to);
      refuseForeignEvidence(writer, from.visitId, input.shownBy);
      const row = {
        id: context.newId(),
        from_id: input.fromId,
        to_id: input.toId,
        certainty: input.certainty,
        joined_by: input.join,
        evidence: input.evidence,
        shown_by: JSON.stringify(input.shownBy),
      };
      writer.insert('finding_link', row);
      return rowToLink(row);
    },
  },
  'finding.changeLink': {
    change: (context, writer, { id, certainty, join, evidence, shownBy }) => {
      const { visitId } = findingAbout(context, writer, String(writer.row('finding_link', id).from_id));
      refuseForeignEvidence(writer, visitId, shownBy ?? []);
      writer.update('finding_link', id, {
        certainty,
        joined_by: join,
        evidence,
        shown_by: shownBy && JSON.stringify(shownBy),
      });
      return rowToLink(writer.row('finding_link', id) as unknown as Tables['finding_link']);
    },
  },
  'finding.unlink': {
    change: (context, writer, { id }) => {
      findingAbout(context, writer, String(writer.row('finding_link', id).from_id));
      writer.remove('finding_link', id);
      return null;
    },
  },
  'finding.showBy': {
    change: (context, writer, { findingId, shotId, readingId }) => {
      findingAbout(context, writer, findingId);
      if (shotId !== undefined) return showFinding(context, writer, findingId, { shotId });
      if (readingId !== undefined) return showFinding(context, writer, findingId, { readingId });
      throw new AppError(
        'invalid-input',
        { issues: [{ path: 'shotId', message: 'a shot or a reading is needed' }] },
        { field: 'shotId' },
      );
    },
  },
  'finding.unshow': {
    change: (context, writer, { id }) => {
      findingAbout(context, writer, String(writer.row('proof', id).finding_id));
      writer.remove('proof', id);
      return null;
    },
  },
  'finding.move': {
    change: (context, writer, { id, to }) => {
      const finding = findingAbout(context, writer, id);
      if (to?.beforeFindingId && again(context, to.beforeFindingId).visitId !== finding.visitId) {
        throw new AppError('finding-of-another-visit', {});
      }
      writer.update('finding', id, { moved_before: to?.beforeFindingId ?? null, moved_reason: to?.reason ?? null });
      return again(context, id);
    },
  },
  'finding.carry': { change: (context, writer, input) => carryFinding(context, writer, input) },
  'standing.get': { read: (context, { visitId }) => standingOfVisit(context.db, visitId) },
  'finding.lastUsed': {
    read: ({ db }) => ({ defects: lastUsedDefects(db), action: lastUsedAction(db) }),
  },
};
