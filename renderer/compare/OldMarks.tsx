import { useState } from 'react';
import type { Homography } from '../../shared-lib/calibration/homography.ts';
import type { OldMark, ThenAndNow } from '../../shared-lib/contract/comparisons.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { ImagePoint } from '../../shared-lib/model/mark.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { call, wordsOf } from '../api/client.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { shapeWords } from '../stage/words.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './ComparePanel.module.css';
import { placeToday } from './drawn-marks.ts';

interface OldMarksProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly seen: ThenAndNow;
  readonly toLater: Homography | null;
}

/** The marks of then. One press makes one a mark of today's finding, to be corrected there. */
export function OldMarks({ record, shot, seen, toLater }: OldMarksProps) {
  const [error, setError] = useState<unknown>(null);
  const [isBusy, setBusy] = useState(false);

  const takeOver = async (old: OldMark, points: readonly ImagePoint[]): Promise<void> => {
    // Not switched off meanwhile: a button that is loses the focus.
    if (isBusy) return;
    setError(null);
    setBusy(true);
    try {
      const findingId =
        old.todayFindingId ??
        (await call('finding.carry', { visitId: record.visit.id, findingId: old.tag.findingId })).id;
      const origin = { by: 'carried', fromMarkId: old.mark.id } as const;
      await call('mark.add', { shotId: shot.id, findingId, shape: old.mark.shape, points: [...points], origin });
    } catch (thrown) {
      setError(thrown);
    } finally {
      setBusy(false);
    }
  };

  if (seen.oldMarks.length === 0) return null;
  return (
    <section className={styles.section} aria-label="Marks of then">
      <h3>Marks of then</h3>
      <p className={styles.hint}>Dotted on today's photo where they lie now.</p>
      <ul>
        {seen.oldMarks.map((old) => {
          const points = toLater && placeToday(old, toLater, shot);
          const { number, tier, state } = old.tag;
          const findingId = old.todayFindingId;
          return (
            <li key={old.mark.id} className={styles.oldMark}>
              <TagPlate number={number} tier={tier} state={state} label={`Finding ${number}:`} />
              <span>{shapeWords[old.mark.shape]}</span>
              {old.takenOverAs !== null && findingId !== null ? (
                <Button
                  look="link"
                  onPress={() =>
                    go({ name: 'visit', visitId: record.visit.id, page: 'photos', shotId: shot.id, findingId })
                  }
                >
                  Correct today's mark
                </Button>
              ) : points ? (
                <Button onPress={() => void takeOver(old, points)}>
                  {findingId === null ? `Take up ${number}, mark it here` : 'Take over for today'}
                </Button>
              ) : (
                <span className="soft">{toLater ? "lies off today's photo" : 'once the photos match'}</span>
              )}
            </li>
          );
        })}
      </ul>
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
