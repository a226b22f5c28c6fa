import { useState } from 'react';
import { decisionWords } from '../../shared-lib/choices/words.ts';
import { changesSince } from '../../shared-lib/comparison/changes-since.ts';
import type { KeptComparison } from '../../shared-lib/contract/comparisons.ts';
import type { OldFinding, RepeatFailure } from '../../shared-lib/contract/returning.ts';
import { answerWords } from '../../shared-lib/returning/answer.ts';
import { listed } from '../../shared-lib/wording/listed.ts';
import { useAppState } from '../app/app-state.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { dateWords, hoursWords } from '../ui/words.ts';
import { AnswerButtons } from './AnswerButtons.tsx';
import styles from './BeforeSection.module.css';

interface OldFindingLineProps {
  readonly old: OldFinding;
  readonly visitId: string;
  /** Photos of then laid under today's: they may tell of it better than what was written. */
  readonly comparisons: readonly KeptComparison[];
  readonly repeat: RepeatFailure | undefined;
  readonly onFinding: (findingId: string) => void;
}

function toldWords({ date, firstDate, timesTold, decided, mended }: OldFinding): string {
  const times = timesTold > 1 ? `, told ${timesTold} times since ${dateWords(firstDate)}` : '';
  if (mended) return `${dateWords(date)}: mended here${times}.`;
  if (decided === null) return `${dateWords(date)}: nobody decided on it${times}.`;
  const said = decided.completed === '' ? '' : `, ${decided.completed}`;
  return `${dateWords(date)}: ${decisionWords[decided.decision]}${said}${times}.`;
}

/** One condition of an earlier visit: its old photo, what was said of it then, and what has become of it. */
export function OldFindingLine({ old, visitId, comparisons, repeat, onFinding }: OldFindingLineProps) {
  const { tag, title, words, photo, due, answer, takenUpAs } = old;
  const { shop } = useAppState();
  const [isAsking, setAsking] = useState(false);
  const isAnswered = answer !== null || takenUpAs !== null;
  return (
    <li className={styles.line} data-answered={isAnswered || undefined}>
      {photo === null ? (
        <span className={styles.noPhoto} />
      ) : (
        <button
          type="button"
          className={styles.photo}
          aria-label={`Photo ${photo.sequence} of ${dateWords(photo.date)}`}
          onClick={() => go({ name: 'visit', visitId: photo.visitId, page: 'photos', shotId: photo.shotId })}
        >
          <img src={`photo://thumb/${photo.digest}`} alt="" loading="lazy" />
        </button>
      )}
      <div className={styles.words}>
        <p className={styles.title}>
          <TagPlate number={tag.number} tier={tag.tier} state={tag.state} label={`Finding ${tag.number}:`} />
          {title}
        </p>
        {words !== '' && !isAnswered && <p className="soft">{words}</p>}
        <p className="soft">{toldWords(old)}</p>
        {due !== null && !isAnswered && <p className={styles.due}>{due.charAt(0).toUpperCase() + due.slice(1)}.</p>}
        {isAnswered && (
          <p>
            <strong>{answer === null ? 'Taken up again' : answerWords[answer.answer].short}</strong>
            {answer !== null && answer.because !== '' && `: ${answer.because}`}
          </p>
        )}
        {changesSince(old, comparisons, shop.units).map(({ words: told, isWorse }) => (
          <p key={told} data-worse={isWorse || undefined} className={styles.change}>
            {told}
          </p>
        ))}
        {repeat !== undefined && (
          <p className={styles.due}>
            Failed again after it was mended here on {dateWords(repeat.mendedOn)}
            {repeat.hoursSince !== null && `, ${hoursWords(repeat.hoursSince)} ago`}.{' '}
            {repeat.rootsLeft.length === 0
              ? 'Is there a root that nobody found?'
              : `Root left then: ${listed(repeat.rootsLeft)}.`}
          </p>
        )}
        {isAnswered && (
          <p className={styles.links}>
            {takenUpAs !== null && (
              <Button look="link" label={`Open finding ${tag.number}`} onPress={() => onFinding(takenUpAs)}>
                Open it
              </Button>
            )}
            <Button look="link" label={`Answer finding ${tag.number} again`} onPress={() => setAsking(!isAsking)}>
              Answer again
            </Button>
          </p>
        )}
      </div>
      {(!isAnswered || isAsking) && (
        <AnswerButtons old={old} visitId={visitId} onAnswered={() => setAsking(false)} onFinding={onFinding} />
      )}
    </li>
  );
}
