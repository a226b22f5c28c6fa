import type { Command } from 'commander';
import { tierWords } from '../../../shared-lib/judgement/tiers.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

export const addStanding = (program: Command): void => {
  program
    .command('standing')
    .description("a visit's findings, ranked, each with why it stands there")
    .requiredOption('--data <dir>', 'the data folder')
    .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
    .option('--json', 'as JSON', false)
    .action(({ data, visit, json }: { data: string; visit: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const standing = await recorder.call('standing.get', { visitId: visit });
          const lines = standing.lines.map(
            (line) =>
              `${line.place}. ${tierWords(line.tier).heading}: finding ${line.number}, ${line.title}. ${line.why}${line.movedBecause === null ? '' : ` Moved by hand from place ${line.computedPlace}: ${line.movedBecause}.`}`,
          );
          const { examined, notExamined, notApplicable } = standing.coverage;
          answer(json, standing, [
            ...lines,
            ...standing.notLookedAt.map(
              ({ spoken, because }) => `Not looked at: ${spoken}${because === null ? '' : `, ${because}`}.`,
            ),
            `Of ${examined + notExamined + notApplicable} agreed items ${examined} were examined, ${notExamined} not, ${notApplicable} do not apply.`,
          ]);
          return exitCodes.done;
        }),
      ),
    );
};
