import type { Tier } from '../contract/standing.ts';
import type { VisitRecord } from '../contract/visits.ts';
import { sayEarlierWork, sayFluid } from '../intake/words.ts';
import type { FindingState } from '../model/finding.ts';
import type { Reading } from '../model/reading.ts';
import type { Shot } from '../model/shot.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { titleOf } from '../ranking/title.ts';
import { turnReason } from '../suspicions/history.ts';
import { suspicionState } from '../suspicions/table.ts';

/** One line of the notebook page, at its time. */
export type Entry = { readonly atMs: number; readonly id: string } & (
  | { readonly kind: 'complaint'; readonly words: string; readonly said: string | null }
  /** What others did to it before, and its fluids as they were, a line each. */
  | { readonly kind: 'received'; readonly lines: readonly string[] }
  | {
      readonly kind: 'suspicion';
      readonly what: string;
      readonly givenUpBecause: string | null;
      readonly foundBy: number | null;
    }
  | { readonly kind: 'shots'; readonly shots: readonly Shot[] }
  | { readonly kind: 'reading'; readonly reading: Reading }
  | {
      readonly kind: 'finding';
      readonly findingId: string;
      readonly number: number;
      readonly title: string;
      readonly state: FindingState;
      /** Null for an observation, a none-found and a superseded one: they have no place in the standing. */
      readonly tier: Tier | null;
      readonly isObservation: boolean;
      readonly superseded: { readonly because: string; readonly byNumber: number } | null;
    }
);

/** Shots of one part, taken without a longer pause than this, are one burst. */
const burstPauseMs = 10 * 60_000;

const takenAtMs = (shot: Shot, openedAtMs: number): number => shot.taken?.atMs ?? openedAtMs;

/** Photos in the order of their numbers, gathered into bursts: same part, no long pause. */
export function burstsOf(shots: readonly Shot[], openedAtMs: number): readonly (readonly Shot[])[] {
  const bursts: Shot[][] = [];
  for (const shot of shots) {
    const burst = bursts.at(-1);
    const last = burst?.at(-1);
    const goesOn =
      last !== undefined &&
      last.component === shot.component &&
      Math.abs(takenAtMs(shot, openedAtMs) - takenAtMs(last, openedAtMs)) <= burstPauseMs;
    if (burst !== undefined && goesOn) burst.push(shot);
    else bursts.push([shot]);
  }
  return bursts;
}

/**
 * A visit as a page of a bench notebook: what was said, read, photographed and found, in the order it happened. What was
 * superseded stays, with what took its place.
 */
export function notebookEntries(record: VisitRecord, units: UnitSystem = 'metric'): readonly Entry[] {
  const { visit, layout, findings, readings, owner } = record;
  const tiers = new Map(record.standing.lines.map((line) => [line.findingId, line]));
  const followers = new Map(
    findings.flatMap((finding) =>
      finding.supersedes === null || finding.binned ? [] : [[finding.supersedes, finding]],
    ),
  );
  const entries: Entry[] = [];
  if (visit.complaint.trim() !== '') {
    entries.push({
      kind: 'complaint',
      id: visit.id,
      atMs: visit.openedAtMs,
      words: visit.complaint,
      said: owner?.name ?? null,
    });
  }
  const received = [
    ...(record.intake?.earlierWork ?? []).map(sayEarlierWork),
    ...(record.intake?.fluids ?? []).map(sayFluid),
  ];
  if (received.length > 0) entries.push({ kind: 'received', id: visit.id, atMs: visit.openedAtMs, lines: received });
  for (const suspicion of record.choices?.suspicions ?? []) {
    const found = suspicionState(suspicion) === 'found' ? suspicion.turns.at(-1)?.findingId : undefined;
    entries.push({
      kind: 'suspicion',
      id: suspicion.id,
      atMs: suspicion.createdAtMs,
      what: suspicion.what,
      givenUpBecause: suspicion.closedBecause === null ? null : turnReason(suspicion.closedBecause),
      foundBy: findings.find(({ id }) => id === found)?.number ?? null,
    });
  }
  const bursts = burstsOf(
    record.shots.filter(({ binned }) => !binned),
    visit.openedAtMs,
  );
  for (const shots of bursts) {
    const [first] = shots;
    if (first) entries.push({ kind: 'shots', id: first.id, atMs: takenAtMs(first, visit.openedAtMs), shots });
  }
  for (const reading of readings) entries.push({ kind: 'reading', id: reading.id, atMs: reading.takenAtMs, reading });
  for (const finding of findings) {
    if (finding.binned) continue;
    const line = tiers.get(finding.id);
    const follower = followers.get(finding.id);
    entries.push({
      kind: 'finding',
      id: finding.id,
      findingId: finding.id,
      atMs: finding.createdAtMs,
      number: finding.number,
      title: titleOf(finding, layout.layout, units),
      state: line?.state ?? finding.state,
      tier: line?.tier ?? null,
      isObservation: finding.kind === 'observation',
      superseded: follower ? { because: follower.supersededBecause ?? '', byNumber: follower.number } : null,
    });
  }
  const order = { complaint: 0, received: 1, suspicion: 2, shots: 3, reading: 4, finding: 5 };
  return entries.sort((a, b) => a.atMs - b.atMs || order[a.kind] - order[b.kind] || a.id.localeCompare(b.id));
}
