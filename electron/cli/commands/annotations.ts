import { randomUUID } from 'node:crypto';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { errorText } from '../../../shared-lib/wording/errors.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

interface Options {
  readonly data: string;
  readonly visit: string;
  readonly photo?: string;
  readonly json: boolean;
}

const of = ({ visit, photo }: Options) => ({ visitId: visit, ...(photo === undefined ? {} : { shotId: photo }) });

export const addAnnotations = (program: Command): void => {
  const command = program.command('annotations').description('marks as W3C Web Annotations (JSON-LD), out and back');
  const withOptions = (sub: Command): Command =>
    sub
      .requiredOption('--data <dir>', 'the data folder')
      .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
      .option('--photo <id>', 'one photo of it alone')
      .option('--json', 'as JSON', false);

  withOptions(
    command
      .command('export')
      .description('writes the marks of a visit or a photo; without a file, to the screen')
      .argument('[file]', 'where to write them'),
  ).action((file: string | undefined, options: Options) =>
    run(options.json, () =>
      withFolder(options.data, 'read', async ({ recorder }) => {
        if (file === undefined) {
          answer(true, await recorder.call('annotations.get', of(options)), []);
          return exitCodes.done;
        }
        const token = randomUUID();
        recorder.offer({ token, path: resolve(file), for: 'write' });
        const written = await recorder.call('annotations.export', { ...of(options), token });
        answer(options.json, written, [`${written.marks} marks written to ${written.path}`]);
        return exitCodes.done;
      }),
    ),
  );

  withOptions(
    command
      .command('import')
      .description('brings marks in from a file; those of our own come back as they were')
      .argument('<file>', 'Web Annotations: a collection, a page, a list or one'),
  ).action((file: string, options: Options) =>
    run(options.json, () =>
      withFolder(options.data, 'write', async ({ recorder }) => {
        const token = randomUUID();
        recorder.offer({ token, path: resolve(file), for: 'read' });
        const done = await recorder.call('annotations.import', { ...of(options), token });
        answer(options.json, done, [
          `${done.added} added, ${done.alreadyHere} here already, ${done.changedHere} changed here since and left`,
          ...done.refused.map(({ id, error }) => `${id}: ${errorText(error)}`),
        ]);
        return done.refused.length > 0 ? exitCodes.partly : exitCodes.done;
      }),
    ),
  );
};
