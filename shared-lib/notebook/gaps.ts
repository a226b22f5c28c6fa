import type { VisitRecord } from '../contract/visits.ts';
import { coverItems } from '../coverage/coverage.ts';
import { speakComponent } from '../parts/speak-component.ts';

/** What is still missing on the page: a blank line at its place, with what fills it. */
export type Gap = { readonly id: string; readonly words: string } & (
  | { readonly fill: 'complaint' | 'hours' }
  | { readonly fill: 'finding'; readonly findingId: string; readonly number: number }
  | { readonly fill: 'scope'; readonly scopeItemId: string }
  | { readonly fill: 'photos' }
);

/** Reasons that one tap gives for not having looked: common practice, no source. */
export const notExaminedReasons = [
  'no access',
  'no tool',
  'not safe',
  'not authorised by owner',
  'not needed',
] as const;

/** The blank lines of a visit, in the order they are best filled. */
export function gapsOf(record: VisitRecord): readonly Gap[] {
  const { visit, standing, layout, shots } = record;
  const gaps: Gap[] = [];
  if (visit.complaint.trim() === '') gaps.push({ id: 'complaint', fill: 'complaint', words: 'What the owner says' });
  if (visit.meter.reading === null) gaps.push({ id: 'hours', fill: 'hours', words: 'Hours on the meter' });
  for (const { findingId, number, missing } of standing.lines) {
    const [first] = missing;
    if (first !== undefined) {
      gaps.push({ id: findingId, fill: 'finding', findingId, number, words: `Finding ${number}: ${first}` });
    }
  }
  for (const { item, state } of coverItems(record)) {
    if (state !== 'not-examined' || item.notExaminedBecause !== null) continue;
    const spoken = speakComponent(item.path, layout.layout);
    gaps.push({ id: item.id, fill: 'scope', scopeItemId: item.id, words: `${spoken}: a finding or a reading, or` });
  }
  if (shots.every(({ binned }) => binned)) gaps.push({ id: 'photos', fill: 'photos', words: 'No photo yet' });
  return gaps;
}
