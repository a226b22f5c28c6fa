import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import styles from './FindingCard.module.css';
import proof from './ProofSection.module.css';

interface ProofSectionProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly shotId: string | undefined;
  readonly onMark: (() => void) | undefined;
}

/** What shows it: photos with their marks, and readings. Without one a finding counts as suspected. */
export function ProofSection({ record, finding, shotId, onMark }: ProofSectionProps) {
  const show = useChange('finding.showBy');
  const unshow = useChange('finding.unshow');
  const proofs = record.proofs.filter(({ findingId }) => findingId === finding.id);
  const shots = proofs.flatMap((each) => {
    const shot = record.shots.find(({ id }) => id === each.shotId);
    return shot === undefined ? [] : [{ each, shot }];
  });
  const readings = proofs.flatMap((each) => {
    const reading = record.readings.find(({ id }) => id === each.readingId);
    return reading === undefined ? [] : [{ each, reading }];
  });
  const isHere = shots.some(({ shot }) => shot.id === shotId);
  const unjoined = record.readings.filter(({ id }) => !readings.some(({ reading }) => reading.id === id));
  return (
    <section className={styles.section} aria-label="Shown by">
      <h3 className={styles.heading}>Shown by</h3>
      {proofs.length === 0 && <p className={styles.small}>Nothing yet: draw a mark on a photo, or join a reading.</p>}
      <ul className={proof.shots}>
        {shots.map(({ each, shot }) => (
          <li key={each.id}>
            <button
              type="button"
              className={proof.shot}
              aria-label={`Photo ${shot.sequence}`}
              onClick={() =>
                go({ name: 'visit', visitId: shot.visitId, page: 'photos', shotId: shot.id, findingId: finding.id })
              }
            >
              <img src={`photo://thumb/${shot.digest}`} alt="" loading="lazy" />
              <span>{shot.sequence}</span>
            </button>
          </li>
        ))}
      </ul>
      {readings.length > 0 && (
        <ul className={styles.list}>
          {readings.map(({ each, reading }) => (
            <li key={each.id}>
              <span>
                {speakComponent(reading.at, record.layout.layout)}:{' '}
                {reading.results.map(({ of, value }) => `${of} ${value ?? ''}`).join(', ')}
              </span>
              <Button look="link" onPress={() => unshow.run({ id: each.id })}>
                Take away
              </Button>
            </li>
          ))}
        </ul>
      )}
      <div className={styles.row}>
        {onMark !== undefined && <Button onPress={onMark}>Mark it on this photo</Button>}
        {shotId !== undefined && !isHere && (
          <Button look="link" onPress={() => show.run({ findingId: finding.id, shotId })}>
            This photo shows it, without a mark
          </Button>
        )}
        {shotId === undefined && record.shots.some(({ binned }) => !binned) && (
          <Button
            onPress={() => {
              const first = shots[0]?.shot ?? record.shots.find(({ binned }) => !binned);
              if (first)
                go({
                  name: 'visit',
                  visitId: finding.visitId,
                  page: 'photos',
                  shotId: first.id,
                  findingId: finding.id,
                });
            }}
          >
            To the photos
          </Button>
        )}
      </div>
      {unjoined.length > 0 && (
        <details>
          <summary className={styles.small}>Join a reading</summary>
          <ul className={styles.list}>
            {unjoined.map((reading) => (
              <li key={reading.id}>
                <span>
                  {speakComponent(reading.at, record.layout.layout)}: {reading.results.map(({ of }) => of).join(', ')}
                </span>
                <Button look="link" onPress={() => show.run({ findingId: finding.id, readingId: reading.id })}>
                  It shows this
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
