import type { EarlierShot } from '../../shared-lib/contract/comparisons.ts';
import { dateWords } from '../ui/words.ts';
import styles from './ComparePanel.module.css';
import { becauseWords } from './words.ts';

interface EarlierPhotosProps {
  readonly shots: readonly EarlierShot[];
  readonly picked: string;
  readonly onPick: (shotId: string) => void;
}

/** Photos of earlier visits that may lie under this one, the newest visit first. */
export function EarlierPhotos({ shots, picked, onPick }: EarlierPhotosProps) {
  return (
    <ul className={styles.photos} aria-label="Earlier photos">
      {shots.map(({ shot, date, because, isKept }) => (
        <li key={shot.id}>
          <button
            type="button"
            className={styles.photo}
            aria-current={shot.id === picked || undefined}
            onClick={() => onPick(shot.id)}
          >
            <img src={`photo://thumb/${shot.digest}`} alt="" loading="lazy" />
            <span>
              <strong>{dateWords(date)}</strong>, photo {shot.sequence}
              <span className="soft">{isKept ? 'laid under it already' : becauseWords[because]}</span>
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
