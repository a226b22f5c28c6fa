import { reportGaps } from '../../../shared-lib/report/gaps.ts';
import type { Handlers } from '../context.ts';
import { issueDeskOf } from './issue-desk.ts';
import { issuedOf, rowToIssued } from './queries.ts';
import { photoFilesFor, reportSource } from './report-of-visit.ts';
import { typesetterOf } from './typesetter-of.ts';
import { writeWholeFile } from './write-file.ts';

export const reportHandlers: Handlers = {
  'report.preview': {
    read: async (context, { visitId, paper }) => {
      const typesetter = typesetterOf(context);
      const source = reportSource(context, visitId);
      const { record, shop } = source;
      const report = await typesetter.build(source);
      const photoFiles = await photoFilesFor(context, report);
      const pages = await typesetter.preview(report, { paper: paper ?? shop.paper, photoFiles });
      return { pages, missing: reportGaps(record, shop) };
    },
  },
  'report.print': {
    read: async (context, { visitId, token, paper }) => {
      const typesetter = typesetterOf(context);
      const source = reportSource(context, visitId);
      const path = context.tokens.spend(token, 'write');
      const report = await typesetter.build(source);
      const photoFiles = await photoFilesFor(context, report);
      const { pdf, pages } = await typesetter.typeset(report, { paper: paper ?? source.shop.paper, photoFiles });
      return { path, pages, digest: await writeWholeFile(path, pdf) };
    },
  },
  'report.issued': { read: ({ db }, { visitId }) => issuedOf(db, visitId).map(rowToIssued) },
  'report.issue': {
    outside: async (context, { visitId, token, paper, undecidedBecause }) => {
      const path = context.tokens.spend(token, 'write');
      // The seal's libraries are loaded when something is sealed: the start does not wait for them.
      const { issueReport } = await import('./issue.ts');
      return issueDeskOf(context).inTurn(() =>
        issueReport(context, typesetterOf(context), { visitId, path, paper, undecidedBecause }),
      );
    },
  },
  'report.verify': {
    read: async (context, { token }) => {
      const path = context.tokens.spend(token, 'read');
      const { verifyReport } = await import('./verify.ts');
      return verifyReport(context, path);
    },
  },
};
