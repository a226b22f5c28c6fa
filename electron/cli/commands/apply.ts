import { randomUUID } from 'node:crypto';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

export const addApply = (program: Command): void => {
  program
    .command('apply')
    .description("enters a scenario file's machine and visits as if a mechanic had")
    .requiredOption('--data <dir>', 'the data folder')
    .option('--json', 'as JSON', false)
    .argument('<file.json>', 'a scenario file')
    .action((file: string, { data, json }: { data: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'write', async ({ recorder }) => {
          const token = randomUUID();
          recorder.offer({ token, path: resolve(file), for: 'read' });
          const applied = await recorder.call('scenario.apply', { token });
          answer(json, applied, [
            `machine ${applied.machineId}`,
            ...Object.entries(applied.visits).map(([id, visitId]) => `${id}: visit ${visitId}`),
            ...applied.leftOut.map((part) => `left out: ${part}`),
          ]);
          return exitCodes.done;
        }),
      ),
    );
};
