import { useState } from 'react';
import type { ThenAndNow } from '../../shared-lib/contract/comparisons.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Icon } from '../ui/Icon.tsx';
import { dateWords, hoursWords } from '../ui/words.ts';
import styles from './ComparePanel.module.css';
import { EarlierPhotos } from './EarlierPhotos.tsx';
import { GrowthLines } from './GrowthLines.tsx';
import { OldMarks } from './OldMarks.tsx';
import type { ComparisonInHand } from './use-comparison.ts';
import { fitWords, thenWords } from './words.ts';

interface ComparePanelProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly seen: ThenAndNow;
  readonly hand: ComparisonInHand;
  readonly picked: number | null;
  readonly onPicked: (index: number) => void;
  readonly onRemove: (index: number) => void;
  readonly onClose: () => void;
}

/** Beside the two photos: what was compared, how well they lie over each other, and what it tells. */
export function ComparePanel(props: ComparePanelProps) {
  const { record, shot, seen, hand, onClose } = props;
  const { earlier } = seen;
  const [isChoosing, setChoosing] = useState(false);
  const others = useAnswer('comparison.earlier', { shotId: shot.id }).data ?? [];
  const at = { name: 'visit', visitId: record.visit.id, page: 'photos', shotId: shot.id } as const;
  return (
    <aside className={styles.pane} aria-label="Then and now">
      <header className={styles.head}>
        <h2>Then and now</h2>
        <button type="button" className={styles.close} onClick={onClose} aria-label="Back to the photo">
          <Icon name="close" />
        </button>
      </header>
      <dl className={styles.both}>
        <dt>Then</dt>
        <dd>
          {thenWords(earlier)}, photo {earlier.shot.sequence}
        </dd>
        <dt>Now</dt>
        <dd>
          {dateWords(record.visit.date)}
          {record.trueHours !== null && ` at ${hoursWords(record.trueHours)}`}, photo {shot.sequence}
        </dd>
      </dl>
      {others.length > 1 && (
        <Button look="link" expanded={isChoosing} onPress={() => setChoosing(!isChoosing)}>
          Another earlier photo
        </Button>
      )}
      {isChoosing && (
        <EarlierPhotos shots={others} picked={earlier.shot.id} onPick={(thenShotId) => go({ ...at, thenShotId })} />
      )}
      <Fit {...props} />
      <GrowthLines record={record} seen={seen} onToPhoto={(place) => go({ ...place, name: 'visit', page: 'photos' })} />
      <OldMarks record={record} shot={shot} seen={seen} toLater={hand.registration?.toLater ?? null} />
      <Points {...props} />
    </aside>
  );
}

/** How well the photos lie over each other, and what is to be done about it. */
function Fit({ hand }: ComparePanelProps) {
  const { state, registration, pairs, error } = hand;
  return (
    <section className={styles.section} aria-label="How they lie over each other">
      <h3>How they lie over each other</h3>
      {state === 'searching' && <p role="status">Looking for spots that show in both photos ...</p>}
      {state === 'found' && (
        <p>
          {hand.foundCount} spots were found in both. The {pairs.length} that hold the photo best are numbered: look
          whether each pair is the same spot, and drag what is not.
        </p>
      )}
      {registration && state !== 'searching' && <p className={styles.fit}>{fitWords(registration)}</p>}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      {state === 'found' && (
        <Button look="primary" onPress={hand.keep}>
          They match: keep
        </Button>
      )}
      {state === 'none' && pairs.length < 2 && (
        <p className={styles.hint}>
          Add a point and set it on the same spot in both photos: a bolt, a corner, an edge that has not changed. Two
          points turn and scale the earlier photo; four or more also take out that the camera stood elsewhere.
        </p>
      )}
    </section>
  );
}

/** The points that both photos were laid over each other by. */
function Points({ hand: { pairs, registration }, picked, onPicked, onRemove }: ComparePanelProps) {
  if (pairs.length === 0) return null;
  return (
    <section className={styles.section} aria-label="Matching points">
      <h3>Matching points</h3>
      <ol className={styles.points}>
        {pairs.map((pair, index) => {
          const away = registration?.pairs.length === pairs.length ? registration.residualsPx[index] : undefined;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its number
            <li key={index} data-picked={picked === index || undefined}>
              <button type="button" className={styles.pointName} onClick={() => onPicked(index)}>
                {index + 1}
                <span className="soft">
                  {pair.by === 'hand' ? 'by hand' : 'found'}
                  {away === undefined ? '' : `, ${away.toFixed(1)} px`}
                </span>
              </button>
              <button
                type="button"
                className={styles.remove}
                aria-label={`Take off point ${index + 1}`}
                onClick={() => onRemove(index)}
              >
                <Icon name="close" size={18} />
              </button>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
