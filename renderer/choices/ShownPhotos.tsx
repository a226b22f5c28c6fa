import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import styles from './ChoicesPage.module.css';

interface ShownPhotosProps {
  readonly record: VisitRecord;
  /** Its own photos only; all of the visit where the statement is about a choice. */
  readonly finding: Finding | null;
  readonly shown: ReadonlySet<string>;
  readonly onChange: (shown: ReadonlySet<string>) => void;
}

/** The photos that were shown while it was told. Only what is pressed is claimed. */
export function ShownPhotos({ record, finding, shown, onChange }: ShownPhotosProps) {
  const ofFinding = new Set(
    [
      ...record.proofs.filter(({ findingId }) => findingId === finding?.id).map(({ shotId }) => shotId),
      ...record.marks.filter(({ findingId }) => findingId === finding?.id).map(({ shotId }) => shotId),
    ].filter((id) => id !== null),
  );
  const shots = record.shots.filter(({ id, binned }) => !binned && (finding === null || ofFinding.has(id)));
  const toggle = (id: string) => {
    const next = new Set(shown);
    if (!next.delete(id)) next.add(id);
    onChange(next);
  };
  return (
    <section aria-label="Shown">
      <h2>Shown</h2>
      <p className="soft">{shots.length === 0 ? 'No photo shows this.' : 'Press each photo that was shown.'}</p>
      <div className={styles.shots}>
        {shots.map(({ id, digest, sequence }) => (
          <button
            key={id}
            type="button"
            className={styles.shot}
            aria-pressed={shown.has(id)}
            onClick={() => toggle(id)}
          >
            <img src={`photo://thumb/${digest}`} alt="" loading="lazy" decoding="async" />
            photo {sequence}
          </button>
        ))}
      </div>
    </section>
  );
}
