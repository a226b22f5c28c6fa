import { useState } from 'react';
import { evidenceWords } from '../../shared-lib/chains/tell.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { FindingLink, LinkEvidence } from '../../shared-lib/model/finding.ts';
import { evidenceSources } from '../../shared-lib/suspicions/sources.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import styles from './FindingCard.module.css';

interface LinkLineProps {
  readonly record: VisitRecord;
  readonly link: FindingLink;
  /** `leads to 5, bridge: heat checking`. */
  readonly words: string;
  /** Several causes lead to the same: then it is said how they are joined. */
  readonly isOneOfSeveral: boolean;
}

const sourceOf = (by: LinkEvidence): string => ('readingId' in by ? by.readingId : by.findingId);

/** One link: how sure it is, how it stands to the other causes, and what it rests on. */
export function LinkLine({ record, link, words, isOneOfSeveral }: LinkLineProps) {
  const { id, certainty, join, evidence, shownBy = [] } = link;
  const change = useChange('finding.changeLink');
  const unlink = useChange('finding.unlink');
  const [isOpen, setOpen] = useState(false);
  const rests = evidenceWords(link, record);
  const named = new Set(shownBy.map(sourceOf));
  const sources = evidenceSources(record).filter(
    ({ id: sourceId }) => sourceId !== link.fromId && sourceId !== link.toId,
  );
  const error = change.error ?? unlink.error;
  const setNamed = (by: LinkEvidence, isOn: boolean) =>
    change.run({
      id,
      shownBy: isOn ? [...shownBy, by] : shownBy.filter((each) => sourceOf(each) !== sourceOf(by)),
    });
  return (
    <li>
      <span>
        {words}
        <span className={styles.small}>
          {' '}
          {certainty}
          {rests !== '' && `; rests on ${rests}`}
        </span>
      </span>
      <Button look="link" expanded={isOpen} label={`What it rests on: ${words}`} onPress={() => setOpen(!isOpen)}>
        {isOpen ? 'Done' : 'Change'}
      </Button>
      {isOpen && (
        <div className={styles.opened}>
          <Choice
            label="How sure is that"
            value={certainty}
            onChoose={(chosen) => change.run({ id, certainty: chosen })}
            options={[
              { value: 'suspected', words: 'suspected' },
              { value: 'confirmed', words: 'confirmed' },
            ]}
          />
          {isOneOfSeveral && (
            <Choice
              label="With the other causes"
              value={join}
              onChoose={(chosen) => change.run({ id, join: chosen })}
              options={[
                { value: 'and', words: 'together with the others' },
                { value: 'or', words: 'this or another' },
              ]}
            />
          )}
          <TextField
            label="What it rests on"
            value={evidence}
            maxLength={1000}
            lines="many"
            onCommit={(text) => change.run({ id, evidence: text.trim() })}
          />
          <fieldset>
            <legend className={styles.small}>And what shows it</legend>
            {sources.map((source) => (
              <Toggle
                key={source.id}
                label={source.title}
                on={named.has(source.id)}
                onChange={(isOn) =>
                  setNamed(source.kind === 'reading' ? { readingId: source.id } : { findingId: source.id }, isOn)
                }
              />
            ))}
          </fieldset>
          <Button look="link" onPress={() => unlink.run({ id })}>
            Take the link away
          </Button>
        </div>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </li>
  );
}
