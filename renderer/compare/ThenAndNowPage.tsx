import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Waiting } from '../ui/Waiting.tsx';
import styles from './ThenAndNow.module.css';
import { ThenAndNow } from './ThenAndNow.tsx';

interface ThenAndNowPageProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly earlierShotId: string;
}

/** An earlier visit's photo under one of today's. */
export function ThenAndNowPage({ record, shot, earlierShotId }: ThenAndNowPageProps) {
  const seen = useAnswer('comparison.see', { shotId: shot.id, earlierShotId });
  const close = () => go({ name: 'visit', visitId: record.visit.id, page: 'photos', shotId: shot.id });
  if (seen.data === undefined) {
    if (!seen.isError) return <Waiting words="Bringing in the earlier photo ..." />;
    return (
      <div className={styles.failed}>
        <ErrorNote {...wordsOf(seen.error)}>
          <Button onPress={close}>Back to the photo</Button>
        </ErrorNote>
      </div>
    );
  }
  return <ThenAndNow record={record} shot={shot} seen={seen.data} onClose={close} />;
}
