import { useState } from 'react';
import type { OldFinding } from '../../shared-lib/contract/returning.ts';
import type { FittedPart } from '../../shared-lib/model/machine.ts';
import { notExaminedReasons } from '../../shared-lib/notebook/gaps.ts';
import { type AnswerKind, answersFor, answerWords } from '../../shared-lib/returning/answer.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './BeforeSection.module.css';

interface AnswerButtonsProps {
  readonly old: OldFinding;
  readonly visitId: string;
  readonly onAnswered: () => void;
  readonly onFinding: (findingId: string) => void;
}

const partKinds: readonly { readonly kind: FittedPart['kind'] | null; readonly words: string }[] = [
  { kind: 'new', words: 'With a new one' },
  { kind: 'used', words: 'With a used one' },
  { kind: 'donor', words: 'From another machine' },
  { kind: null, words: 'Nobody knows' },
];

/** One tap answers. Two answers ask a second one: why it was not looked at, and what was fitted. */
export function AnswerButtons({ old, visitId, onAnswered, onFinding }: AnswerButtonsProps) {
  const answer = useChange('return.answer');
  const [asks, setAsks] = useState<'not-re-examined' | 'part-replaced' | null>(null);
  const { findingId, number } = old.tag;
  const give = (kind: AnswerKind, more: { because?: string; part?: FittedPart['kind']; asFindingId?: string } = {}) =>
    answer.run({ visitId, findingId, answer: kind, ...more }, ({ finding }) => {
      onAnswered();
      // Grown means: today's size is written next.
      if (finding !== null && (kind === 'grown' || kind === 'smaller')) onFinding(finding.id);
    });
  const press = (kind: AnswerKind) =>
    kind === 'not-re-examined' || kind === 'part-replaced' ? setAsks(kind) : give(kind);
  return (
    <div className={styles.answers}>
      {asks === null && (
        <fieldset className={styles.row} aria-label={`What has become of finding ${number}`}>
          {answersFor(old.mended).map((kind) => (
            <Button
              key={kind}
              disabled={answer.isRunning}
              label={`Finding ${number}: ${answerWords[kind].short}`}
              onPress={() => press(kind)}
            >
              {answerWords[kind].short}
            </Button>
          ))}
        </fieldset>
      )}
      {asks === 'not-re-examined' && (
        <fieldset className={styles.row} aria-label={`Why finding ${number} was not looked at again`}>
          {notExaminedReasons.map((because) => (
            <Button key={because} disabled={answer.isRunning} onPress={() => give('not-re-examined', { because })}>
              {because}
            </Button>
          ))}
          <Button look="link" onPress={() => setAsks(null)}>
            Another answer
          </Button>
        </fieldset>
      )}
      {asks === 'part-replaced' && (
        <fieldset className={styles.row} aria-label={`What the part of finding ${number} was replaced with`}>
          {partKinds.map(({ kind, words }) => (
            <Button
              key={words}
              disabled={answer.isRunning}
              onPress={() => give('part-replaced', kind === null ? {} : { part: kind })}
            >
              {words}
            </Button>
          ))}
          <Button look="link" onPress={() => setAsks(null)}>
            Another answer
          </Button>
        </fieldset>
      )}
      {old.maybe.map((finding) => (
        <p key={finding.findingId} className={styles.maybe}>
          <span className="soft">
            Finding {finding.number} of today lies at the same place: {finding.title}.
          </span>
          <Button
            look="link"
            disabled={answer.isRunning}
            label={`Finding ${finding.number} of today is finding ${number}`}
            onPress={() => give('same', { asFindingId: finding.findingId })}
          >
            It is this one
          </Button>
        </p>
      ))}
      {answer.error !== null && <ErrorNote {...wordsOf(answer.error)} />}
    </div>
  );
}
