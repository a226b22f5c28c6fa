import type { ReportGap } from '../../shared-lib/contract/reports.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { go, type Place } from '../app/place.ts';
import styles from './ReportPage.module.css';

interface GapListProps {
  readonly record: VisitRecord;
  readonly heading: string;
  readonly gaps: readonly ReportGap[];
}

/** What is missing, each a jump to where it is mended. */
export function GapList({ record, heading, gaps }: GapListProps) {
  if (gaps.length === 0) return null;
  return (
    <section aria-label={heading}>
      <h3 className={styles.heading}>
        {heading}: {gaps.length}
      </h3>
      <ul>
        {gaps.map((gap) => (
          <li key={`${gap.at.place}/${gap.at.id}/${gap.what}`} className={styles.gap}>
            <button type="button" className={styles.jump} onClick={() => go(placeOf(record, gap))}>
              {gap.what}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function placeOf({ visit, machine }: VisitRecord, { at }: ReportGap): Place {
  const page = { name: 'visit', visitId: visit.id } as const;
  switch (at.place) {
    case 'finding':
      return { ...page, page: 'page', findingId: at.id };
    case 'decision':
      return { ...page, page: 'choices', ...(at.id === visit.id ? {} : { findingId: at.id }) };
    case 'work':
      return { ...page, page: 'work' };
    case 'shot':
      return { ...page, page: 'photos', shotId: at.id };
    case 'machine':
      return { name: 'machine', machineId: machine.id };
    case 'shop':
      return { name: 'setup' };
    case 'visit':
    case 'scope':
    case 'before':
      return { ...page, page: 'page' };
  }
}
