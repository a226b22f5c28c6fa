import type { Command } from 'commander';
import { sayMoney } from '../../../shared-lib/choices/money.ts';
import { decisionWords } from '../../../shared-lib/choices/words.ts';
import type { VisitChoices } from '../../../shared-lib/contract/choices.ts';
import type { Standing } from '../../../shared-lib/contract/standing.ts';
import { tierWords } from '../../../shared-lib/judgement/tiers.ts';
import { turnReason } from '../../../shared-lib/suspicions/history.ts';
import { listed } from '../../../shared-lib/wording/listed.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

const linesOf = (
  { choices, decisions, undecided, suspicions, carriedOver, money }: VisitChoices,
  standing: Standing,
) => {
  const numbers = new Map(standing.lines.map(({ findingId, number }) => [findingId, number]));
  const findings = (ids: readonly string[]) =>
    `finding${ids.length === 1 ? '' : 's'} ${listed(ids.map((id) => String(numbers.get(id) ?? '?')))}`;
  return [
    ...suspicions.map(
      ({ what, closedBecause }) =>
        `Suspected: ${what}${closedBecause === null ? '' : `; given up: ${turnReason(closedBecause)}`}.`,
    ),
    ...choices.flatMap((choice) => [
      `${choice.name}${choice.chosen ? ' (taken)' : ''}: highest risk left ${choice.highestLevelLeft}.`,
      ...(choice.costs.length === 0 ? [] : [`  comes to ${sayMoney(choice.cost.total, money.currency)}`]),
      ...choice.left.map(({ number, tier, title }) => `  leaves ${number}, ${title}: ${tierWords(tier).words}`),
      ...choice.willReturn.map(
        ({ findingId, rootsLeft }) => `  ${findings([findingId])} will return: root left, ${findings(rootsLeft)}`,
      ),
    ]),
    ...decisions.map(({ findingId, choiceId, decision, completed, by }) => {
      const about =
        findingId === null ? `“${choices.find(({ id }) => id === choiceId)?.name ?? '?'}”` : findings([findingId]);
      return `Decided by ${by} on ${about}: ${decisionWords[decision]}${completed === '' ? '' : `, ${completed}`}.`;
    }),
    ...carriedOver
      .filter(({ newDecision }) => newDecision)
      .map(({ findingId, firstDate }) => `First told on ${firstDate}, changed since: ${findings([findingId])}.`),
    undecided.length === 0 ? 'Nothing is left to decide.' : `Not decided: ${findings(undecided)}.`,
  ];
};

export const addChoices = (program: Command): void => {
  program
    .command('choices')
    .description('the ways to go on with a visit, what each leaves, and what was decided')
    .requiredOption('--data <dir>', 'the data folder')
    .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
    .option('--json', 'as JSON', false)
    .action(({ data, visit, json }: { data: string; visit: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const choices = await recorder.call('choices.get', { visitId: visit });
          const standing = await recorder.call('standing.get', { visitId: visit });
          answer(json, choices, linesOf(choices, standing));
          return exitCodes.done;
        }),
      ),
    );
};
