import { useState } from 'react';
import type { ImportedMarks } from '../../shared-lib/contract/annotations.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { errorSentence } from '../../shared-lib/wording/errors.ts';
import { call, wordsOf } from '../api/client.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { countWords } from '../ui/words.ts';
import styles from './ShotPane.module.css';

interface MarkFilesProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
}

type Outcome =
  | { readonly kind: 'written'; readonly marks: number; readonly path: string }
  | { readonly kind: 'brought-in'; readonly done: ImportedMarks };

/** The marks of a photo out to a file that other programs read, and back. */
export function MarkFiles({ record, shot }: MarkFilesProps) {
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const [error, setError] = useState<unknown>(null);
  const on = { visitId: record.visit.id, shotId: shot.id };

  const attempt = async (work: () => Promise<Outcome | null>) => {
    setError(null);
    setOutcome(null);
    try {
      setOutcome(await work());
    } catch (thrown) {
      setError(thrown);
    }
  };
  const write = () =>
    attempt(async () => {
      const suggestedName = `${record.machine.serial || record.machine.kind} photo ${shot.sequence} marks.jsonld`;
      const chosen = await call('shell.saveAnnotations', { suggestedName });
      return chosen && { kind: 'written', ...(await call('annotations.export', { ...on, ...chosen })) };
    });
  const bringIn = () =>
    attempt(async () => {
      const chosen = await call('shell.chooseAnnotations', {});
      return chosen && { kind: 'brought-in', done: await call('annotations.import', { ...on, ...chosen }) };
    });

  return (
    <section aria-label="Marks as a file">
      <div className={styles.row}>
        <Button look="link" onPress={() => void write()}>
          Write its marks to a file
        </Button>
        <Button look="link" onPress={() => void bringIn()}>
          Bring in marks from a file
        </Button>
      </div>
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      {outcome?.kind === 'written' && (
        <p role="status" className={styles.name}>
          {countWords(outcome.marks, 'mark')} written to {outcome.path}.
        </p>
      )}
      {outcome?.kind === 'brought-in' && <BroughtIn done={outcome.done} />}
    </section>
  );
}

function BroughtIn({ done }: { readonly done: ImportedMarks }) {
  const { added, alreadyHere, changedHere, refused } = done;
  return (
    <div role="status">
      <p>
        {countWords(added, 'mark')} brought in.
        {alreadyHere > 0 && ` ${countWords(alreadyHere, 'mark')} ${alreadyHere === 1 ? 'was' : 'were'} here already.`}
        {changedHere > 0 &&
          ` ${countWords(changedHere, 'mark')} ${changedHere === 1 ? 'was' : 'were'} changed here since, and left so.`}
      </p>
      {refused.length > 0 && (
        <ul>
          {refused.map(({ id, error }) => (
            <li key={id} className={styles.name}>
              {errorSentence(error).happened}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
