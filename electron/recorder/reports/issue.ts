import { createHash } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { IssuedReport } from '../../../shared-lib/contract/reports.ts';
import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';
import { changesSince } from '../../../shared-lib/report/changes-since.ts';
import { reportGaps } from '../../../shared-lib/report/gaps.ts';
import type { Issue } from '../../../shared-lib/report/source.ts';
import type { Context } from '../context.ts';
import { shopKey } from '../seal/shop-key.ts';
import { signPdf } from '../seal/sign-pdf.ts';
import { highestNumber, issuedOf, rowToIssued } from './queries.ts';
import { photoFilesFor, reportSource } from './report-of-visit.ts';
import type { Typesetter } from './typeset.ts';
import { writeWholeFile } from './write-file.ts';

interface IssueInput {
  readonly visitId: string;
  readonly path: string;
  readonly paper: 'a4' | 'us-letter' | undefined;
  readonly undecidedBecause: string | undefined;
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Where the sealed PDFs of a data folder lie, so that what was handed over can be handed over again. */
export const issuedFile = (
  dataFolder: string,
  { number, revision }: Pick<IssuedReport, 'number' | 'revision'>,
): string => join(dataFolder, 'issued', `report ${number}, revision ${revision}.pdf`);

const nextIssue = ({ db }: Context, visitId: string, now: VisitRecord): Issue => {
  const last = issuedOf(db, visitId).at(-1);
  if (!last) return { number: highestNumber(db) + 1, revision: 1, changes: [] };
  const before = (JSON.parse(last.record) as { record: VisitRecord }).record;
  const changes = changesSince(before, now);
  if (changes.length === 0)
    throw new AppError('report-nothing-changed', { number: last.number, revision: last.revision });
  return { number: last.number, revision: last.revision + 1, changes };
};

/**
 * Issues a visit's report: frozen, numbered, typeset, sealed, kept, and written where it is wanted. The row is the last
 * thing written: a number is used only by a report that exists. Called in turn (`issue-desk.ts`): until then its number is
 * anybody's.
 *
 * @throws AppError 'report-not-ready' with what is missing, 'report-nothing-changed', 'report-typesetting-failed', 'file-unwritable'
 */
export const issueReport = async (
  context: Context,
  typesetter: Typesetter,
  { visitId, path, paper, undecidedBecause }: IssueInput,
): Promise<IssuedReport & { path: string; pages: number }> => {
  const { dataFolder, clock } = context;
  const draft = reportSource(context, visitId);
  const { shop } = draft;
  const gaps = reportGaps(draft.record, shop).filter(({ needed }) => needed);
  const open = gaps.filter(({ at }) => at.place === 'decision');
  const isAnswered = undecidedBecause !== undefined && undecidedBecause !== '';
  const stops = isAnswered ? gaps.filter((gap) => !open.includes(gap)) : gaps;
  if (stops.length > 0) {
    const missing = stops.map(({ what }) => what);
    throw new AppError('report-not-ready', { missing, decisionsOnly: stops.length === open.length });
  }
  const issue = {
    ...nextIssue(context, visitId, draft.record),
    ...(isAnswered && open.length > 0 ? { undecidedBecause } : {}),
  };
  const report = await typesetter.build({ ...draft, issue });
  const photoFiles = await photoFilesFor(context, report);
  const { pdf, pages } = await typesetter.typeset(report, { paper: paper ?? shop.paper, photoFiles });
  const key = await shopKey(dataFolder, { shopName: shop.name, atMs: clock() });
  const issuedAtMs = clock();
  const sealed = await signPdf(pdf, key, {
    shopName: shop.name,
    place: shop.address,
    contact: shop.phone,
    reason: `Report ${issue.number}, revision ${issue.revision}`,
    atMs: issuedAtMs,
  });
  await mkdir(join(dataFolder, 'issued'), { recursive: true });
  const pdfDigest = await writeWholeFile(issuedFile(dataFolder, issue), sealed);
  await writeWholeFile(path, sealed);
  const row = {
    id: context.newId(),
    visit_id: visitId,
    number: issue.number,
    revision: issue.revision,
    issued_at_ms: issuedAtMs,
    record: report.record.json,
    record_digest: sha256(report.record.json),
    pdf_digest: pdfDigest,
  };
  context.mutate((writer) => {
    writer.about({ visitId, machineId: draft.record.machine.id });
    writer.insert('report', row);
  });
  return { ...rowToIssued(row), path, pages };
};
