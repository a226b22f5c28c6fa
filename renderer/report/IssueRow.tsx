import { useState } from 'react';
import type { ReportGap } from '../../shared-lib/contract/reports.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { errorSentence } from '../../shared-lib/wording/errors.ts';
import { call, wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { dateOnClock, timeWords } from '../ui/shop-clock.ts';
import { TextField } from '../ui/TextField.tsx';
import { dateWords } from '../ui/words.ts';
import styles from './ReportPage.module.css';

const fileName = ({ machine, visit }: VisitRecord): string =>
  `${[machine.kind, machine.serial, visit.date].join(' ').replace(/[^\p{L}\p{N} .-]+/gu, '-')}.pdf`;

interface IssueRowProps {
  readonly record: VisitRecord;
  /** What must be answered first. */
  readonly needed: readonly ReportGap[];
}

/** Issuing: numbered, frozen and sealed. What was issued is listed; a correction is the next revision. */
export function IssueRow({ record, needed }: IssueRowProps) {
  const { shop } = useAppState();
  const visitId = record.visit.id;
  const issued = useAnswer('report.issued', { visitId }).data ?? [];
  const issue = useChange('report.issue');
  const [written, setWritten] = useState<string | null>(null);
  const [error, setError] = useState<unknown>(null);
  const [isRefused, setRefused] = useState(false);
  const [undecidedBecause, setUndecidedBecause] = useState('');
  const isOnlyUndecided = needed.length > 0 && needed.every(({ at }) => at.place === 'decision');
  const isReady = needed.length === 0 || (isOnlyUndecided && undecidedBecause.trim() !== '');
  const run = async () => {
    setError(null);
    setWritten(null);
    // Refused before a place is chosen for a file that would not be written.
    setRefused(!isReady);
    if (!isReady) return;
    try {
      const chosen = await call('shell.choosePdf', { suggestedName: fileName(record) });
      if (chosen !== null)
        setWritten((await issue.runOrThrow({ visitId, token: chosen.token, undecidedBecause })).path);
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
            issued {dateWords(dateOnClock(issuedAtMs, shop.timeZone))} {timeWords(issuedAtMs, shop.timeZone)}, sealed
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
      {isRefused && !isReady && (
        <ErrorNote
          {...errorSentence({ code: 'report-not-ready', details: { missing: needed.map(({ what }) => what) } })}
        />
      )}
      {isOnlyUndecided && (
        <TextField
          label="Or issue it undecided, because"
          value={undecidedBecause}
          onChange={setUndecidedBecause}
          maxLength={400}
        />
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
