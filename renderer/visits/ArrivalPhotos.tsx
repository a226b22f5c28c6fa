import { useRef, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { viewWords } from '../../shared-lib/intake/words.ts';
import { type ArrivalPhoto, type ArrivalView, arrivalViews } from '../../shared-lib/model/intake.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './IntakePanel.module.css';

interface ArrivalPhotosProps {
  readonly record: VisitRecord;
  readonly photos: readonly ArrivalPhoto[];
}

/** The views of the walk round, each with its photo: the condition on arrival protects both sides. */
export function ArrivalPhotos({ record, photos }: ArrivalPhotosProps) {
  const show = useChange('arrival.show');
  const [choosing, setChoosing] = useState<ArrivalView | null>(null);
  const visitId = record.visit.id;
  const views = useRef<HTMLUListElement>(null);
  /** What shows the view in hand, or that nothing does; the keys go back to the view. */
  const choose = (view: ArrivalView, shotId: string | null) =>
    show.run({ visitId, view, shotId }, () => {
      views.current?.querySelector<HTMLElement>('[aria-expanded=true]')?.focus();
      setChoosing(null);
    });
  const shots = record.shots.filter(({ binned }) => !binned);
  const taken = new Set(photos.map(({ shotId }) => shotId));
  if (shots.length === 0) return <p className="soft">Take photos in first; then say here what each shows.</p>;
  return (
    <>
      <ul ref={views} className={styles.views}>
        {arrivalViews.map((view) => {
          const shot = shots.find(({ id }) => id === photos.find((photo) => photo.view === view)?.shotId);
          const words = viewWords[view];
          return (
            <li key={view}>
              <button
                type="button"
                className={styles.view}
                aria-expanded={choosing === view}
                aria-label={`${words}: ${shot === undefined ? 'no photo' : `photo ${shot.sequence}`}`}
                onClick={() => setChoosing(choosing === view ? null : view)}
              >
                {shot === undefined ? (
                  <span className={styles.blank} />
                ) : (
                  <img src={`photo://thumb/${shot.digest}`} alt="" loading="lazy" />
                )}
                <span>{words}</span>
              </button>
            </li>
          );
        })}
      </ul>
      {choosing !== null && (
        <section className={styles.choosing} aria-label={`Which photo shows the ${viewWords[choosing]}`}>
          <p>Which photo shows it: {viewWords[choosing]}?</p>
          <ul className={styles.shots}>
            {[...shots.filter(({ id }) => !taken.has(id)), ...shots.filter(({ id }) => taken.has(id))].map((shot) => (
              <li key={shot.id}>
                <button
                  type="button"
                  className={styles.shot}
                  aria-label={`Photo ${shot.sequence}${shot.caption === '' ? '' : `, ${shot.caption}`}`}
                  onClick={() => choose(choosing, shot.id)}
                >
                  <img src={`photo://thumb/${shot.digest}`} alt="" loading="lazy" />
                </button>
              </li>
            ))}
          </ul>
          <Button look="link" onPress={() => choose(choosing, null)}>
            No photo shows it
          </Button>
        </section>
      )}
      {show.error !== null && <ErrorNote {...wordsOf(show.error)} />}
    </>
  );
}
