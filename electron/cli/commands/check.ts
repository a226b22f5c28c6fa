import type { Command } from 'commander';
import { checkRecord } from '../../recorder/check.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

export const addCheck = (program: Command): void => {
  program
    .command('check')
    .description("holds a data folder's database, journal and photos against themselves")
    .requiredOption('--data <dir>', 'the data folder')
    .option('--json', 'as JSON', false)
    .action(({ data, json }: { data: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const result = await checkRecord(recorder);
          answer(json, result, [
            ...result.problems,
            `${result.journalEntries} journal entries and ${result.originals} photos checked, ${result.problems.length} problems.`,
          ]);
          return result.problems.length === 0 ? exitCodes.done : exitCodes.partly;
        }),
      ),
    );
};
