import type { OldFinding } from '../../shared-lib/contract/returning.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { dateWords, hoursWords } from '../ui/words.ts';
import styles from './BeforeSection.module.css';
import { OldFindingLine } from './OldFindingLine.tsx';

interface BeforeSectionProps {
  readonly record: VisitRecord;
  readonly onFinding: (findingId: string) => void;
}

const isAnswered = ({ answer, takenUpAs }: OldFinding): boolean => answer !== null || takenUpAs !== null;

/** What earlier visits left open, each with its old photo, answered one by one; then what has changed since. */
export function BeforeSection({ record, onFinding }: BeforeSectionProps) {
  const { before, visit } = record;
  if (before === undefined || (before.old.length === 0 && before.readings.length === 0)) return null;
  const open = before.old.filter((each) => !isAnswered(each));
  const line = (old: OldFinding) => (
    <OldFindingLine
      key={old.tag.findingId}
      old={old}
      visitId={visit.id}
      comparisons={record.comparisons ?? []}
      repeat={before.repeats.find(({ findingId }) => findingId === old.takenUpAs)}
      onFinding={onFinding}
    />
  );
  return (
    <section className={styles.before} aria-label="Since last time">
      <h3>
        Last here on {dateWords(before.date)}
        <span className="soft">
          {before.trueHours !== null && ` at ${hoursWords(before.trueHours)}`}
          {before.hoursSince !== null && `; ${hoursWords(before.hoursSince)} since`}
        </span>
      </h3>
      {open.length > 0 && (
        <>
          <p className={styles.heading}>
            {open.length === 1 ? 'What has become of this?' : `What has become of these ${open.length}?`}
          </p>
          <ul aria-label="Not answered yet">{open.map(line)}</ul>
        </>
      )}
      {before.old.length > open.length && (
        <>
          <p className={styles.heading}>Answered</p>
          <ul aria-label="Answered">{before.old.filter(isAnswered).map(line)}</ul>
        </>
      )}
      {before.readings.length > 0 && (
        <>
          <p className={styles.heading}>Readings, then and now</p>
          <ul aria-label="Readings, then and now">
            {before.readings.map(({ readingId, place, what, was, now, change, state, date }) => (
              <li key={`${readingId}/${what}`} className={styles.reading}>
                <span>
                  {place}, {what}
                </span>
                <span className="num">
                  {was} <span className="soft">on {dateWords(date)}</span>, now {now}
                </span>
                <span data-worse={state === 'worse' || undefined} className={styles.change}>
                  {change}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
