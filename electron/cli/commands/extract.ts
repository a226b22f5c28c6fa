import { readFile } from 'node:fs/promises';
import type { Command } from 'commander';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { recordInPdf } from '../../recorder/reports/record-in-pdf.ts';
import { run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

const readPdf = async (path: string): Promise<Uint8Array> => {
  try {
    return new Uint8Array(await readFile(path));
  } catch (cause) {
    throw new AppError(
      'file-unreadable',
      { path, reason: cause instanceof Error ? cause.message : String(cause) },
      { cause },
    );
  }
};

export const addExtract = (program: Command): void => {
  program
    .command('extract')
    .description('prints the record that a report carries, byte for byte')
    .argument('<file.pdf>', 'a report made by this program')
    .action((path: string) =>
      run(false, async () => {
        process.stdout.write(await recordInPdf(await readPdf(path)));
        return exitCodes.done;
      }),
    );
};
