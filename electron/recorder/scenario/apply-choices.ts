import {
  type Reader,
  readBack,
  type Statement,
  statementOnChoice,
  statementOnFinding,
} from '../../../shared-lib/choices/statement.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { ScenarioVisit } from '../../../shared-lib/scenario/shape.ts';
import type { Context } from '../context.ts';
import type { TimesOfVisit } from './times-of-visit.ts';

type Steps = NonNullable<ScenarioVisit['steps']>;
type After = Extract<NonNullable<ScenarioVisit['choices']>[number]['dispositions'][string], object>['after'];

export interface ApplyingChoices {
  readonly context: Context;
  readonly visit: ScenarioVisit;
  readonly visitId: string;
  readonly findingId: (id: string) => string;
  readonly readingIds: ReadonlyMap<string, string>;
  readonly times: TimesOfVisit;
  readonly decidedAtMs: number;
}

const stepInput = ({ step, at }: Steps[number]) => ({ step, at: at ?? null });

const afterInput = (after: NonNullable<After>) => {
  const { safety, ...others } = after;
  return { ...others, ...(safety === undefined ? {} : { safety: safety ?? ('none' as const) }) };
};

const minuteMs = 60_000;

/** Listed once the complaint is heard; each thing bears on it as soon as it is there, and the last of them closes it. */
const takeSuspicions = async (applying: ApplyingChoices): Promise<void> => {
  const { context, visit, visitId, findingId, readingIds, times } = applying;
  for (const { what, at, defect, evidence, closed } of visit.suspicions ?? []) {
    const listed = { clock: () => times.openedAtMs + 10 * minuteMs };
    const { id } = await context.call(
      'suspicion.add',
      { visitId, what, at: at ?? null, defect: defect ?? null },
      listed,
    );
    let lastMs = listed.clock();
    for (const { ref, bears, because = '' } of evidence) {
      const readingId = readingIds.get(ref);
      const by = readingId === undefined ? { findingId: findingId(ref) } : { readingId };
      const there = readingId === undefined ? times.findingAtMs(ref) : times.readingAtMs(ref);
      lastMs = Math.max(lastMs, there + minuteMs);
      await context.call('suspicion.bear', { id, ...by, bears, because }, { clock: () => there + minuteMs });
    }
    if (closed !== undefined)
      await context.call('suspicion.close', { id, because: closed }, { clock: () => lastMs + minuteMs });
  }
};

/** The file's choices; what it returns is the one that the owner took. */
const takeChoices = async ({ context, visit, visitId, findingId }: ApplyingChoices): Promise<string | null> => {
  let chosen: string | null = null;
  if (visit.money !== undefined) await context.call('money.set', { visitId, ...visit.money });
  for (const choice of visit.choices ?? []) {
    const { id } = await context.call('choice.add', { visitId, name: choice.name });
    for (const [ref, disposition] of Object.entries(choice.dispositions)) {
      const { is, after, why = '' } = typeof disposition === 'string' ? { is: disposition } : disposition;
      await context.call('choice.dispose', {
        id,
        findingId: findingId(ref),
        is,
        after: after === undefined ? null : afterInput(after),
        why,
      });
    }
    for (const step of choice.steps ?? []) await context.call('choice.addStep', { id, ...stepInput(step) });
    for (const cost of choice.costs ?? []) await context.call('choice.addCost', { id, ...cost });
    if (choice.chosen === true) chosen = id;
  }
  return chosen;
};

const takeDecisions = async (
  { context, visit, visitId, findingId, decidedAtMs }: ApplyingChoices,
  chosen: string | null,
): Promise<void> => {
  const record = await context.call('visit.get', { id: visitId });
  const { choices, money } = await context.call('choices.get', { visitId });
  const { owner, standing } = record;
  const shopWords = (await context.call('app.state', {})).shop.statementWords;
  const reader = (by: string | undefined): Reader => ({
    by: by ?? owner?.name ?? 'the owner',
    capacity: by === undefined ? (owner?.capacity ?? '') : '',
    date: visit.date,
    photos: [],
    howTold: '',
    shopWords,
  });
  type Taken = NonNullable<ScenarioVisit['decisions']>[number];
  const take = (
    about: { findingId: string } | { choiceId: string },
    statement: Statement,
    { decision, until = '', words = '', by }: Omit<Taken, 'finding'>,
  ) => {
    const told = reader(by);
    // A file says in the owner's words what is changed or refused.
    const completed = decision === 'accepted-with-changes' || decision === 'refused-by-mechanic' ? words : until;
    return context.call(
      'decision.take',
      {
        visitId,
        ...about,
        decision,
        completed,
        words,
        by: told.by,
        capacity: told.capacity,
        statement: readBack(statement, decision, completed),
        unsignedBecause: 'written down from a file',
      },
      { clock: () => decidedAtMs },
    );
  };
  const choice = choices.find(({ id }) => id === chosen);
  if (choice) {
    const statement = statementOnChoice(choice, standing, { currency: money.currency, reader: reader(undefined) });
    await take({ choiceId: choice.id }, statement, { decision: 'accepted' });
  }
  for (const decision of visit.decisions ?? []) {
    const id = findingId(decision.finding);
    const finding = record.findings.find((each) => each.id === id);
    if (!finding) throw new AppError('not-found', { record: 'finding', id: decision.finding });
    await take({ findingId: id }, statementOnFinding(finding, standing, reader(decision.by)), decision);
  }
};

/** What was suspected, the work, the choices and what was decided, in the order a mechanic comes to them. */
export const applyChoices = async (applying: ApplyingChoices): Promise<void> => {
  const { context, visit, visitId } = applying;
  await takeSuspicions(applying);
  for (const step of visit.steps ?? []) await context.call('visitStep.add', { visitId, ...stepInput(step) });
  await takeDecisions(applying, await takeChoices(applying));
};
