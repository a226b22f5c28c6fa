import type { Bears, Evidence, Suspicion } from '../choices/records.ts';
import type { VisitRecord } from '../contract/visits.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { ownLimit } from './own-limit.ts';
import { type EvidenceSource, evidenceSources, sourceById } from './sources.ts';

/** Given up, found to be so by a confirmed finding, or neither. */
export type SuspicionState = 'open' | 'given-up' | 'found';

/** What one thing says of one suspicion now, and what it was held to say before. */
export interface EvidenceCell {
  readonly bears: Bears;
  /** The mechanic's own reason; empty where there is none. */
  readonly because: string;
  /** The limit of the sheet or method itself. */
  readonly limit: string;
  readonly atMs: number | null;
  readonly earlier: readonly Evidence[];
}

export interface SuspicionColumn {
  readonly suspicion: Suspicion;
  readonly state: SuspicionState;
  /** The finding that showed it, where one did. */
  readonly foundBy: string | null;
  readonly counts: Readonly<Record<Bears, number>>;
  /** By the id of what bears on it. */
  readonly cells: ReadonlyMap<string, EvidenceCell>;
}

export interface SuspicionTable {
  readonly columns: readonly SuspicionColumn[];
  /** All that could speak, in the order it came. */
  readonly sources: readonly EvidenceSource[];
}

export function suspicionState({ closedBecause, turns }: Pick<Suspicion, 'closedBecause' | 'turns'>): SuspicionState {
  if (closedBecause !== null) return 'given-up';
  return turns.at(-1)?.turn === 'found' ? 'found' : 'open';
}

const keyOf = ({ findingId, readingId }: Evidence): string => findingId ?? readingId ?? '';

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout' | 'choices'>;

function columnOf(suspicion: Suspicion, record: Told, units: UnitSystem): SuspicionColumn {
  const cells = new Map<string, EvidenceCell>();
  for (const [key, said] of Map.groupBy(suspicion.evidence, keyOf)) {
    const last = said.at(-1);
    if (last === undefined) continue;
    const source = sourceById(last, record, units);
    const { bears, because, atMs } = last;
    const limit = source === null ? '' : ownLimit(source, bears);
    cells.set(key, { bears, because: because.trim(), limit, atMs, earlier: said.slice(0, -1) });
  }
  const count = (bears: Bears) => [...cells.values()].filter((cell) => cell.bears === bears).length;
  const state = suspicionState(suspicion);
  return {
    suspicion,
    state,
    foundBy: state === 'found' ? (suspicion.turns.at(-1)?.findingId ?? null) : null,
    counts: { for: count('for'), against: count('against'), 'cannot tell': count('cannot tell') },
    cells,
  };
}

/** The suspicions of a visit against all that can speak for or against them. The last word on each counts. */
export function suspicionTable(record: Told, units: UnitSystem = 'metric'): SuspicionTable {
  const columns = (record.choices?.suspicions ?? []).map((suspicion) => columnOf(suspicion, record, units));
  const sources = [...evidenceSources(record, units)];
  // What was superseded or taken out of the standing still stands in the row where it spoke.
  const known = new Set(sources.map(({ id }) => id));
  for (const { evidence } of record.choices?.suspicions ?? []) {
    for (const each of evidence) {
      const source = known.has(keyOf(each)) ? null : sourceById(each, record, units);
      if (source === null) continue;
      known.add(source.id);
      sources.push(source);
    }
  }
  return { columns, sources: sources.sort((a, b) => a.atMs - b.atMs || a.id.localeCompare(b.id)) };
}
