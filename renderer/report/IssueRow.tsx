import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { call, wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { clockWords, dateWords } from '../ui/words.ts';
import styles from './ReportPage.module.css';

const fileName = ({ machine, visit }: VisitRecord): string =>
  `${[machine.kind, machine.serial, visit.date].join(' ').replace(/[^\p{L}\p{N} .-]+/gu, '-')}.pdf`;

/** Issuing: numbered, frozen and sealed. What was issued is listed; a correction is the next revision. */
export function IssueRow({ record }: { readonly record: VisitRecord }) {
  const visitId = record.visit.id;
  const issued = useAnswer('report.issued', { visitId }).data ?? [];
  const issue = useChange('report.issue');
  const [written, setWritten] = useState<string | null>(null);
  const [error, setError] = useState<unknown>(null);
  const run = async () => {
    setError(null);
    setWritten(null);
    try {
      const chosen = await call('shell.choosePdf', { suggestedName: fileName(record) });
      if (chosen !== null) setWritten((await issue.runOrThrow({ visitId, token: chosen.token })).path);
    } catch (thrown) {
      setError(thrown);
    }
  };
  return (
    <section className={styles.issue} aria-label="Issued">
      {issued.map(({ id, number, revision, issuedAtMs }) => (
        <p key={id}>
          <strong>
            Report {number}, revision {revision}
          </strong>{' '}
          <span className="soft">
            issued {dateWords(new Date(issuedAtMs).toISOString())} {clockWords(issuedAtMs)}, sealed
          </span>
        </p>
      ))}
      <Button onPress={() => void run()} disabled={issue.isRunning}>
        {issue.isRunning ? 'Sealing it ...' : issued.length === 0 ? 'Issue and seal it' : 'Issue the next revision'}
      </Button>
      <p className="soft small">
        Issued, it has a number and a seal that any reader can check. Its findings are then only superseded, not edited.
      </p>
      {written !== null && (
        <p role="status" className={styles.path}>
          Written to {written}{' '}
          <Button look="link" onPress={() => void call('shell.showFile', { path: written }).catch(setError)}>
            Open it
          </Button>
        </p>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
