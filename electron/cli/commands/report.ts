import { randomUUID } from 'node:crypto';
import { resolve } from 'node:path';
import { type Command, Option } from 'commander';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

interface Options {
  readonly data: string;
  readonly visit: string;
  readonly out: string;
  readonly paper?: 'a4' | 'us-letter';
  readonly json: boolean;
}

export const addReport = (program: Command): void => {
  program
    .command('report')
    .description("writes a visit's condition report, a draft, as PDF")
    .requiredOption('--data <dir>', 'the data folder')
    .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
    .requiredOption('--out <file.pdf>', 'where to write it')
    .addOption(new Option('--paper <size>', "else the shop's own").choices(['a4', 'us-letter']))
    .option('--json', 'as JSON', false)
    .action(({ data, visit, out, paper, json }: Options) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const token = randomUUID();
          recorder.offer({ token, path: resolve(out), for: 'write' });
          const written = await recorder.call('report.print', { visitId: visit, token, ...(paper ? { paper } : {}) });
          answer(json, written, [`${written.path}: ${written.pages} pages, draft, SHA-256 ${written.digest}`]);
          return exitCodes.done;
        }),
      ),
    );
};
