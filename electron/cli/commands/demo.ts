import type { Command } from 'commander';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

export const addDemo = (program: Command): void => {
  program
    .command('demo')
    .description('fills a data folder with a made-up shop: three machines, five visits')
    .requiredOption('--data <dir>', 'the data folder; made when absent')
    .option('--json', 'as JSON', false)
    .action(({ data, json }: { data: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'write', async ({ recorder }) => {
          const state = await recorder.call('app.begin', { with: 'demo' });
          const machines = await recorder.call('machine.floor', {});
          answer(json, { shop: state.shop, machines }, [
            `${state.shop.name}: ${machines.length} machines stand in ${recorder.dataFolder}`,
            `Look around: npm start -- --data ${recorder.dataFolder}`,
          ]);
          return exitCodes.done;
        }),
      ),
    );
};
