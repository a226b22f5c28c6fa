import { wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { dateWords, hoursWords } from '../ui/words.ts';
import styles from './BeforeSection.module.css';

interface BeforeSectionProps {
  readonly visitId: string;
  readonly onFinding: (findingId: string) => void;
}

/** What the visit before left open, each with its old photo: taken up by one press, under the number it has for life. */
export function BeforeSection({ visitId, onFinding }: BeforeSectionProps) {
  const before = useAnswer('finding.openBefore', { visitId }).data;
  const carry = useChange('finding.carry');
  if (before === undefined || before === null || before.lines.length === 0) return null;
  return (
    <section className={styles.before} aria-label="Open from last time">
      <h3>
        Open from {dateWords(before.date)}
        {before.trueHours !== null && <span className="soft"> at {hoursWords(before.trueHours)}</span>}
      </h3>
      <ul>
        {before.lines.map(({ tag, title, words, photo }) => (
          <li key={tag.findingId} className={styles.line}>
            {photo === null ? (
              <span className={styles.noPhoto} />
            ) : (
              <button
                type="button"
                className={styles.photo}
                aria-label={`Photo ${photo.sequence} of ${dateWords(before.date)}`}
                onClick={() => go({ name: 'visit', visitId: before.visitId, page: 'photos', shotId: photo.shotId })}
              >
                <img src={`photo://thumb/${photo.digest}`} alt="" loading="lazy" />
              </button>
            )}
            <span className={styles.words}>
              <span className={styles.title}>
                <TagPlate number={tag.number} tier={tag.tier} state={tag.state} label={`Finding ${tag.number}:`} />
                {title}
              </span>
              {words !== '' && <span className="soft">{words}</span>}
            </span>
            <Button
              disabled={carry.isRunning}
              label={`Take up finding ${tag.number} again`}
              onPress={() => carry.run({ visitId, findingId: tag.findingId }, ({ id }) => onFinding(id))}
            >
              Take it up
            </Button>
          </li>
        ))}
      </ul>
      {carry.error !== null && <ErrorNote {...wordsOf(carry.error)} />}
    </section>
  );
}
