import type { Command } from 'commander';
import { storiesOf } from '../../../shared-lib/chains/stories.ts';
import { evidenceWords, tellStory } from '../../../shared-lib/chains/tell.ts';
import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';
import { historyOf } from '../../../shared-lib/suspicions/history.ts';
import { nextTestRule, nextTests } from '../../../shared-lib/suspicions/next-test.ts';
import { suspicionTable } from '../../../shared-lib/suspicions/table.ts';
import { whyNext } from '../../../shared-lib/suspicions/why-next.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { withFolder } from '../with-folder.ts';

/** What was suspected and what bears on it, what to test next, and what led to what. */
const causesOf = (record: VisitRecord) => ({
  suspicions: suspicionTable(record).columns.map(({ suspicion, state, foundBy, counts, cells }) => ({
    id: suspicion.id,
    what: suspicion.what,
    state,
    foundBy,
    counts,
    evidence: [...cells].map(([source, { bears, because, limit }]) => ({ source, bears, because, limit })),
    history: historyOf(suspicion, record).map(({ words }) => words),
  })),
  next: nextTests(record).map((test) => ({ ...test, why: whyNext(test, record.choices?.suspicions ?? []) })),
  chains: storiesOf(record).map((story) => ({
    told: tellStory(story),
    roots: story.roots,
    links: story.links.map((link) => ({ ...link, restsOn: evidenceWords(link, record) })),
  })),
});

const linesOf = ({ suspicions, next, chains }: ReturnType<typeof causesOf>): string[] => [
  ...suspicions.flatMap(({ what, history }) => [`${what}:`, ...history.map((line) => `  ${line}`)]),
  ...(next.length === 0 ? [] : [`What to test next. ${nextTestRule}`]),
  ...next.map(({ name, again, why }) => `  ${name}${again === '' ? '' : `, again, ${again}`}: ${why}`),
  ...chains.map(({ told }) => told.join(' ')),
];

export const addCauses = (program: Command): void => {
  program
    .command('causes')
    .description('what was suspected, what bears on it, what to test next, and what led to what')
    .requiredOption('--data <dir>', 'the data folder')
    .requiredOption('--visit <id>', 'the visit, as `wm list` names it')
    .option('--json', 'as JSON', false)
    .action(({ data, visit, json }: { data: string; visit: string; json: boolean }) =>
      run(json, () =>
        withFolder(data, 'read', async ({ recorder }) => {
          const causes = causesOf(await recorder.call('visit.get', { id: visit }));
          answer(json, causes, linesOf(causes));
          return exitCodes.done;
        }),
      ),
    );
};
