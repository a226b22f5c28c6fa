import type { StandingLine } from '../contract/standing.ts';
import type { Finding } from '../model/finding.ts';
import { standsAgain } from './answer.ts';
import { mendedIn, type VisitThen } from './visit-then.ts';

/** One condition through the visits that told of it, oldest first. */
export interface Track {
  readonly tellings: readonly { readonly visit: VisitThen; readonly finding: Finding; readonly line: StandingLine }[];
  /** The newest of them was mended, then or at a later visit. */
  readonly mended: boolean;
  /** Work that is written down says so, not the choice that was taken alone. */
  readonly mendedOnRecord: boolean;
}

/**
 * The conditions that earlier visits left, also where a visit between has not spoken of them: nothing that was told once is
 * lost because nobody asked. Closed are those that were answered as mended and holding or as replaced, and those that were
 * looked for again and not found.
 */
export function openTracks(earlier: readonly VisitThen[]): Track[] {
  const closed = new Set<string>();
  const tracks = new Map<string, Track>();
  for (const visit of earlier) {
    const lines = new Map(visit.standing.lines.map((line) => [line.findingId, line]));
    const mended = mendedIn(visit);
    for (const { findingId, answer } of visit.answers) if (!standsAgain.has(answer)) closed.add(findingId);
    for (const finding of visit.input.findings) {
      if (finding.binned) continue;
      const before = finding.trackOf === null ? undefined : tracks.get(finding.trackOf);
      if (finding.trackOf !== null) tracks.delete(finding.trackOf);
      const line = lines.get(finding.id);
      if (line === undefined) continue;
      tracks.set(finding.id, {
        tellings: [...(before?.tellings ?? []), { visit, finding, line }],
        mended: mended.has(finding.id),
        mendedOnRecord: mended.has(finding.id) && visit.work.length > 0,
      });
    }
  }
  return [...tracks].filter(([id]) => !closed.has(id)).map(([, track]) => track);
}
