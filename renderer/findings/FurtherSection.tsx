import { useState } from 'react';
import type { StandingLine } from '../../shared-lib/contract/standing.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { replacePlace } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './FindingCard.module.css';

interface FurtherSectionProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly line: StandingLine | undefined;
  readonly onClose: () => void;
}

/** What is done with a finding as a whole: moved by hand, superseded, put in the bin. */
export function FurtherSection({ record, finding, line, onClose }: FurtherSectionProps) {
  const move = useChange('finding.move');
  const supersede = useChange('finding.supersede');
  const bin = useChange('finding.bin');
  const [reason, setReason] = useState('');
  const [because, setBecause] = useState('');
  const others = record.standing.lines.filter(({ findingId }) => findingId !== finding.id);
  const error = move.error ?? supersede.error ?? bin.error;
  return (
    <section className={styles.section} aria-label="Further">
      {line !== undefined && (
        <details>
          <summary className={styles.heading}>Move it in the standing</summary>
          {finding.moved === null ? (
            <>
              <TextField
                label="Because"
                value={reason}
                onChange={setReason}
                maxLength={400}
                hint="The reason prints beside it."
              />
              <div className={styles.row}>
                {others.map((other) => (
                  <Button
                    key={other.findingId}
                    disabled={reason.trim() === '' || move.isRunning}
                    onPress={() => move.run({ id: finding.id, to: { beforeFindingId: other.findingId, reason } })}
                  >
                    {`Before ${other.number}`}
                  </Button>
                ))}
                <Button
                  disabled={reason.trim() === '' || move.isRunning}
                  onPress={() => move.run({ id: finding.id, to: { beforeFindingId: null, reason } })}
                >
                  Last
                </Button>
              </div>
            </>
          ) : (
            <div className={styles.row}>
              <span>
                Moved from place {line.computedPlace}: {finding.moved.reason}
              </span>
              <Button onPress={() => move.run({ id: finding.id, to: null })}>Back to where it was computed</Button>
            </div>
          )}
        </details>
      )}
      <details>
        <summary className={styles.heading}>It turned out to be something else</summary>
        <p className={styles.small}>This conclusion stays on the page, struck through; a new one takes its place.</p>
        <TextField label="What showed it" value={because} onChange={setBecause} maxLength={400} />
        <Button
          disabled={because.trim() === '' || supersede.isRunning}
          onPress={() =>
            supersede.run({ id: finding.id, because }, (next) =>
              replacePlace({ name: 'visit', visitId: finding.visitId, page: 'page', findingId: next.id }),
            )
          }
        >
          Begin the new one
        </Button>
      </details>
      <Button look="link" disabled={bin.isRunning} onPress={() => bin.run({ id: finding.id }, onClose)}>
        Put this finding in the bin
      </Button>
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
