import { resolve } from 'node:path';
import type { Command } from 'commander';
import { errorText } from '../../../shared-lib/wording/errors.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { takePaths } from '../take-paths.ts';
import { withFolder } from '../with-folder.ts';

/** Names may hold line breaks and worse; a line of output stays a line. */
const oneLine = (name: string): string => JSON.stringify(name).slice(1, -1);

export const addImport = (program: Command): void => {
  program
    .command('import')
    .description('takes photos into a visit; one line a file')
    .requiredOption('--data <dir>', 'the data folder')
    .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
    .option('--json', 'as JSON', false)
    .argument('<file...>', 'photos')
    .action((files: string[], { data, visit, json }: { data: string; visit: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'write', async (open) => {
          const taken = await takePaths(
            open,
            visit,
            files.map((file) => resolve(file)),
          );
          answer(
            json,
            taken,
            taken.map((file) =>
              file.accepted
                ? `accepted ${file.digest} ${oneLine(file.name)}${file.alreadyHere ? ', was here before' : ''}${file.remark === null ? '' : `, ${file.remark}`}`
                : `refused  ${oneLine(file.name)}: ${errorText(file.error)}`,
            ),
          );
          return taken.every(({ accepted }) => accepted) ? exitCodes.done : exitCodes.partly;
        }),
      ),
    );
};
