import type { VisitRecord } from '../contract/visits.ts';
import type { Person, Shop } from '../model/shop.ts';

/** An issued report's place among the others; a draft has none. */
export interface Issue {
  readonly number: number;
  readonly revision: number;
  /** What this revision changes in the one before, in words; empty for a first one. */
  readonly changes: readonly string[];
  /** Why it goes out before all is decided; absent where all is. */
  readonly undecidedBecause?: string | undefined;
}

/** All that a report is made from. Clock, zone and digest are handed in: assembling is pure. */
export interface ReportSource {
  readonly record: VisitRecord;
  readonly shop: Shop;
  readonly people: readonly Person[];
  readonly nowMs: number;
  /** Minutes east of UTC. */
  readonly zoneOffsetMin: number;
  readonly programVersion: string;
  readonly issue?: Issue | undefined;
}
