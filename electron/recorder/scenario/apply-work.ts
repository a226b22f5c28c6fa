import type { ApplyingChoices } from './apply-choices.ts';

/** The work that followed: each piece of work with its parts and what shows that it holds; then the hand-over. */
export const applyWork = async ({
  context,
  visit,
  visitId,
  findingId,
  readingIds,
}: Omit<ApplyingChoices, 'times' | 'decidedAtMs'>): Promise<void> => {
  for (const { finding, words, at, outcome, because, parts = [], shownBy = [] } of visit.work ?? []) {
    const as = { clock: () => Date.parse(at) };
    const about = finding === undefined ? {} : { findingId: findingId(finding) };
    const { id } = await context.call('work.add', { visitId, ...about, words, outcome, because }, as);
    for (const part of parts) await context.call('work.addPart', { id, ...part }, as);
    for (const ref of shownBy) await context.call('work.prove', { id, readingId: readingIds.get(ref) }, as);
  }
  if (visit.handOver) await context.call('handOver.write', { visitId, ...visit.handOver });
};
