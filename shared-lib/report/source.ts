import type { VisitRecord } from '../contract/visits.ts';
import type { Person, Shop } from '../model/shop.ts';

/** All that a report is made from. Clock, zone and digest are handed in: assembling is pure. */
export interface ReportSource {
  readonly record: VisitRecord;
  readonly shop: Shop;
  readonly people: readonly Person[];
  readonly nowMs: number;
  /** Minutes east of UTC. */
  readonly zoneOffsetMin: number;
  readonly programVersion: string;
}
