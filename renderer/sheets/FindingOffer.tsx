import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Reading } from '../../shared-lib/model/reading.ts';
import { asksForFinding } from '../../shared-lib/readings/verdict-weight.ts';
import type { SheetOutcome } from '../../shared-lib/sheets/compute.ts';
import { sheetOf } from '../../shared-lib/sheets/index.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './FindingOffer.module.css';

interface FindingOfferProps {
  readonly record: VisitRecord;
  readonly reading: Reading;
  readonly outcome: SheetOutcome;
}

/** A reading that is beyond its limit asks for a finding; it never makes one by itself. */
export function FindingOffer({ record, reading, outcome }: FindingOfferProps) {
  const add = useChange('finding.add');
  const show = useChange('finding.showBy');
  const unshow = useChange('finding.unshow');
  const visitId = record.visit.id;
  const proofs = record.proofs.filter(({ readingId }) => readingId === reading.id);
  const shown = new Set(proofs.map(({ findingId }) => findingId));
  const findings = record.findings.filter(({ binned }) => !binned);
  const titleOf = (id: string) =>
    record.standing.lines.find(({ findingId }) => findingId === id)?.title ??
    findings.find((finding) => finding.id === id)?.words ??
    '';
  const worst = outcome.results.find(({ verdict }) => asksForFinding(verdict));
  const sheet = sheetOf(reading.sheet);
  const suggested = (worst && sheet?.results[worst.of]?.suggests) ?? null;
  const open = (findingId: string) => go({ name: 'visit', visitId, page: 'page', findingId });
  const begin = () =>
    add.run(
      {
        visitId,
        locations: [reading.at],
        readingId: reading.id,
        defect: suggested,
        words: worst === undefined ? '' : `${outcome.name}, ${worst.of}: ${worst.verdict}`,
      },
      ({ id }) => open(id),
    );
  const others = findings.filter(({ id }) => !shown.has(id));
  const error = add.error ?? show.error ?? unshow.error;
  if (worst === undefined && proofs.length === 0 && others.length === 0) return null;
  return (
    <section className={styles.offer} aria-label="Findings it shows">
      {proofs.map((proof) => {
        const number = findings.find(({ id }) => id === proof.findingId)?.number;
        if (number === undefined) return null;
        return (
          <p key={proof.id} className={styles.line}>
            <Button look="link" onPress={() => open(proof.findingId)}>
              {`Shows finding ${number}: ${titleOf(proof.findingId)}`}
            </Button>
            <Button look="link" onPress={() => unshow.run({ id: proof.id })} label={`Take it off finding ${number}`}>
              Take it off
            </Button>
          </p>
        );
      })}
      {worst !== undefined && proofs.length === 0 && (
        <p className={styles.line}>
          <span>
            <strong>
              {worst.of.charAt(0).toUpperCase() + worst.of.slice(1)}: {worst.verdict}.
            </strong>{' '}
            Whether that is a finding is yours to say.
          </span>
          <Button onPress={begin} disabled={add.isRunning}>
            Begin a finding with it
          </Button>
        </p>
      )}
      {others.length > 0 && (
        <details className={styles.others}>
          <summary>It shows a finding that is there</summary>
          <ul>
            {others.map(({ id, number }) => (
              <li key={id}>
                <Button look="link" onPress={() => show.run({ findingId: id, readingId: reading.id })}>
                  {`Finding ${number}: ${titleOf(id)}`}
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
