import { resolve } from 'node:path';
import type { Command } from 'commander';
import { backupFolder, type FolderCopy, restoreFolder } from '../../recorder/backup/whole-folder.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

const words = ({ entries, originals }: FolderCopy): string =>
  `${entries} journal entries and ${originals} photos, all read back.`;

export const addBackup = (program: Command): void => {
  program
    .command('backup')
    .description('copies a data folder, photos and all, into an empty folder, and reads the copy back')
    .requiredOption('--data <dir>', 'the data folder; it may be in use')
    .requiredOption('--to <dir>', 'an empty folder, or one that is not there')
    .option('--json', 'as JSON', false)
    .action(({ data, to, json }: { data: string; to: string; json: boolean }) =>
      run(json, async () => {
        const copied = await backupFolder(resolve(data), resolve(to));
        answer(json, copied, [words(copied)]);
        return exitCodes.done;
      }),
    );
};

export const addRestore = (program: Command): void => {
  program
    .command('restore')
    .description('makes a data folder of a backup, in an empty folder or one that is not there')
    .requiredOption('--from <dir>', 'the backup')
    .requiredOption('--data <dir>', 'the data folder to make')
    .option('--json', 'as JSON', false)
    .action(({ from, data, json }: { from: string; data: string; json: boolean }) =>
      run(json, async () => {
        const restored = await restoreFolder(resolve(from), resolve(data));
        answer(json, restored, [words(restored)]);
        return exitCodes.done;
      }),
    );
};
