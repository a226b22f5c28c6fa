import { randomUUID } from 'node:crypto';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

interface IssueOptions {
  readonly data: string;
  readonly visit: string;
  readonly out: string;
  readonly undecided?: string;
  readonly json: boolean;
}

export const addIssue = (program: Command): void => {
  program
    .command('issue')
    .description("issues a visit's report: frozen, numbered and sealed; a correction is the next revision")
    .requiredOption('--data <dir>', 'the data folder')
    .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
    .requiredOption('--out <file.pdf>', 'where to write it')
    .option('--undecided <why>', 'issues it before all is decided, and says why')
    .option('--json', 'as JSON', false)
    .action(({ data, visit, out, undecided, json }: IssueOptions) =>
      run(json, () =>
        withFolder(data, 'write', async ({ recorder }) => {
          const token = randomUUID();
          recorder.offer({ token, path: resolve(out), for: 'write' });
          const issued = await recorder.call('report.issue', {
            visitId: visit,
            token,
            undecidedBecause: undecided,
          });
          answer(json, issued, [
            `${issued.path}: report ${issued.number}, revision ${issued.revision}, ${issued.pages} pages, SHA-256 ${issued.pdfDigest}`,
          ]);
          return exitCodes.done;
        }),
      ),
    );
};

const stateWords = {
  genuine: 'Genuine: sealed by this shop and not changed since',
  altered: 'Altered: it is not as it was sealed',
  "another shop's": "Another shop's: its seal holds, and it is not this shop's",
  'not signed': 'Not signed: a draft, or not one of ours',
} as const;

export const addVerify = (program: Command): void => {
  program
    .command('verify')
    .description("whether a PDF is genuine, altered, another shop's or not signed, and which revision")
    .requiredOption('--data <dir>', 'the data folder of the shop that should have sealed it')
    .option('--json', 'as JSON', false)
    .argument('<file.pdf>', 'a report')
    .action((file: string, { data, json }: { data: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const token = randomUUID();
          recorder.offer({ token, path: resolve(file), for: 'read' });
          const { state, number, revision, replacedBy } = await recorder.call('report.verify', { token });
          const which = number === null ? '' : ` Report ${number}, revision ${revision}.`;
          const newer = replacedBy === null ? '' : ` Revision ${replacedBy} has taken its place.`;
          answer(json, { state, number, revision, replacedBy }, [`${stateWords[state]}.${which}${newer}`]);
          return state === 'genuine' ? exitCodes.done : exitCodes.partly;
        }),
      ),
    );
};
