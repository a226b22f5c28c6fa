import type { Command } from 'commander';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

export const addList = (program: Command): void => {
  program
    .command('list')
    .description('the machines of a data folder and their visits')
    .requiredOption('--data <dir>', 'the data folder')
    .option('--json', 'as JSON', false)
    .action(({ data, json }: { data: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const machines = await recorder.call('machine.floor', {});
          const pages = await Promise.all(
            machines.map(({ machine }) => recorder.call('machine.page', { id: machine.id })),
          );
          const lines = pages.flatMap((page) => [
            `${page.machine.kind}, serial ${page.machine.serial || 'not read'}${page.owner ? `, ${page.owner.name}` : ''}`,
            ...page.visits.map(
              ({ visit, trueHours, tags, shots }) =>
                `  ${visit.id}  ${visit.date}  ${trueHours === null ? 'hours not read' : `${trueHours} h`}  ${tags.length} findings ranked, ${shots} photos${visit.leftAtMs === null ? '' : ', gone out'}`,
            ),
          ]);
          answer(json, pages, lines.length > 0 ? lines : ['No machine stands here yet.']);
          return exitCodes.done;
        }),
      ),
    );
};
