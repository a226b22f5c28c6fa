import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { TakePhotosLine } from '../photos/TakePhotosLine.tsx';
import styles from './DialPhotos.module.css';

interface DialPhotosProps {
  readonly record: VisitRecord;
  readonly chosen: readonly string[];
  readonly onChoose: (shotIds: string[]) => void;
}

/** The visit's photos; those that show the dial are picked. */
export function DialPhotos({ record, chosen, onChoose }: DialPhotosProps) {
  const shots = record.shots.filter(({ binned }) => !binned);
  return (
    <section className={styles.dials} aria-label="Photo of the dial">
      {shots.length === 0 && <p className="soft">No photo yet in this visit.</p>}
      <ul className={styles.shots}>
        {shots.toReversed().map(({ id, digest, sequence, caption }) => {
          const isChosen = chosen.includes(id);
          return (
            <li key={id}>
              <button
                type="button"
                className={styles.shot}
                aria-pressed={isChosen}
                aria-label={`Photo ${sequence}${caption === '' ? '' : `, ${caption}`}`}
                onClick={() => onChoose(isChosen ? chosen.filter((each) => each !== id) : [...chosen, id])}
              >
                <img src={`photo://thumb/${digest}`} alt="" loading="lazy" decoding="async" />
              </button>
            </li>
          );
        })}
      </ul>
      <TakePhotosLine visitId={record.visit.id} />
    </section>
  );
}
