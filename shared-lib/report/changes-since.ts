import canonicalize from 'canonicalize';
import type { VisitRecord } from '../contract/visits.ts';
import { titleOf } from '../ranking/title.ts';

type Frozen = Pick<
  VisitRecord,
  | 'visit'
  | 'findings'
  | 'links'
  | 'readings'
  | 'shots'
  | 'marks'
  | 'standing'
  | 'layout'
  | 'choices'
  | 'work'
  | 'intake'
>;

const standing = (record: Frozen): readonly string[] => record.standing.lines.map(({ findingId }) => findingId);

// A frozen record has its keys in canonical order, a fresh one has not.
const same = (a: unknown, b: unknown): boolean => canonicalize(a) === canonicalize(b);

/** What one revision changes in the one before, a sentence each; empty when a reader would see the same report. */
export function changesSince(before: Frozen, now: Frozen): string[] {
  const changes: string[] = [];
  const live = ({ findings }: Frozen) => findings.filter(({ binned }) => !binned);
  const old = new Map(live(before).map((finding) => [finding.id, finding]));
  for (const finding of live(now)) {
    const earlier = old.get(finding.id);
    old.delete(finding.id);
    const title = titleOf(finding, now.layout.layout);
    if (earlier === undefined) changes.push(`Finding ${finding.number} is new: ${title}.`);
    else if (!same(earlier, finding)) changes.push(`Finding ${finding.number} has changed: ${title}.`);
  }
  for (const { number } of old.values()) changes.push(`Finding ${number} was taken out.`);
  if (!same(before.readings, now.readings)) changes.push('The readings have changed.');
  const photos = ({ shots, marks }: Frozen) => ({ shots: shots.filter(({ binned }) => !binned), marks });
  if (!same(photos(before), photos(now))) changes.push('Photos or marks have changed.');
  if (!same(before.choices?.choices, now.choices?.choices)) changes.push('The choices have changed.');
  if (!same(before.choices?.decisions, now.choices?.decisions)) changes.push('What was decided has changed.');
  if (!same(before.choices?.suspicions, now.choices?.suspicions)) changes.push('What was suspected has changed.');
  if (!same(before.work, now.work)) changes.push('The work done or the hand-over has changed.');
  if (!same(before.intake, now.intake)) changes.push('What is said of how it was received has changed.');
  if (!same(before.links, now.links)) changes.push('What led to what has changed.');
  if (!same(before.visit, now.visit)) changes.push('The particulars of the visit have changed.');
  if (changes.length === 0 && !same(standing(before), standing(now)))
    changes.push('The order of the findings has changed.');
  return changes;
}
