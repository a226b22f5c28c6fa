import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { outcomes, outcomeWords, type WorkItem } from '../../shared-lib/work/records.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import { ReadingWords } from '../visits/ReadingWords.tsx';
import { PartRows } from './PartRows.tsx';
import styles from './WorkPage.module.css';

interface WorkItemBlockProps {
  readonly item: WorkItem;
  readonly record: VisitRecord;
  /** Just written: what was done is said next. */
  readonly isNew: boolean;
  readonly isUnproven: boolean;
}

/** One piece of work: what was done, how far, with which parts, and what shows that it holds. */
export function WorkItemBlock({ item, record, isNew, isUnproven }: WorkItemBlockProps) {
  const { id, words, outcome, because } = item;
  const change = useChange('work.change');
  const remove = useChange('work.remove');
  const line = record.standing.lines.find(({ findingId }) => findingId === item.findingId);
  const name = line === undefined ? 'other work' : `finding ${line.number}`;
  const error = change.error ?? remove.error;
  return (
    <section className={styles.item} aria-label={`Work on ${name}`}>
      <header className={styles.itemHead}>
        {line !== undefined && (
          <TagPlate number={line.number} tier={line.tier} state={line.state} label={`Finding ${line.number}:`} />
        )}
        <h2 className={styles.title}>{line?.title ?? 'Other work'}</h2>
        <Button look="link" label={`Take off the work on ${name}`} onPress={() => remove.run({ id })}>
          Take off
        </Button>
      </header>
      <Choice
        label="How far"
        hideLabel
        options={outcomes.map((value) => ({ value, words: outcomeWords[value] }))}
        value={outcome}
        onChoose={(value) => change.run({ id, outcome: value })}
      />
      {outcome !== 'done' && (
        <TextField
          label="Because"
          value={because}
          onCommit={(text) => change.run({ id, because: text })}
          maxLength={400}
        />
      )}
      {outcome !== 'not-done' && (
        <>
          <TextField
            label="What was done"
            value={words}
            onCommit={(text) => change.run({ id, words: text })}
            lines="many"
            maxLength={1000}
            autoFocus={isNew}
          />
          <PartRows item={item} record={record} />
          <Proofs item={item} record={record} isUnproven={isUnproven} />
        </>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}

function Proofs({ item, record, isUnproven }: Pick<WorkItemBlockProps, 'item' | 'record' | 'isUnproven'>) {
  const prove = useChange('work.prove');
  const unprove = useChange('work.unprove');
  const { id, proofs } = item;
  const readings = record.readings.filter((each) => !proofs.some(({ readingId }) => readingId === each.id));
  const shots = record.shots.filter((each) => !each.binned && !proofs.some(({ shotId }) => shotId === each.id));
  const place = record.findings.find((finding) => finding.id === item.findingId)?.locations[0];
  const visitId = record.visit.id;
  const error = prove.error ?? unprove.error;
  return (
    <section className={styles.part} aria-label="The test after the work">
      <h3>The test after the work</h3>
      {isUnproven && <p className={styles.open}>Nothing shows yet that it holds.</p>}
      <ul>
        {proofs.map((proof) => {
          const reading = record.readings.find((each) => each.id === proof.readingId);
          const shot = record.shots.find((each) => each.id === proof.shotId);
          return (
            <li key={proof.id} className={styles.proof}>
              <span>
                {reading !== undefined && <ReadingWords reading={reading} layout={record.layout.layout} />}
                {shot !== undefined && `Photo ${shot.sequence}${shot.caption === '' ? '' : `, ${shot.caption}`}`}
              </span>
              <Button look="link" label="Take this test off" onPress={() => unprove.run({ id, proofId: proof.id })}>
                Take off
              </Button>
            </li>
          );
        })}
      </ul>
      {readings.length > 0 && (
        <ul aria-label="Readings of this visit">
          {readings.map((reading) => (
            <li key={reading.id} className={styles.proof}>
              <span>
                <ReadingWords reading={reading} layout={record.layout.layout} />
              </span>
              <Button look="link" onPress={() => prove.run({ id, readingId: reading.id })}>
                This shows it
              </Button>
            </li>
          ))}
        </ul>
      )}
      <div className={styles.row}>
        <Button
          onPress={() => go({ name: 'visit', visitId, page: 'sheets', ...(place === undefined ? {} : { at: place }) })}
        >
          Fill a sheet
        </Button>
        {shots.length > 0 && (
          <select
            className={styles.select}
            aria-label="A photo shows it"
            value=""
            onChange={(event) => event.target.value !== '' && prove.run({ id, shotId: event.target.value })}
          >
            <option value="">a photo shows it ...</option>
            {shots.map((shot) => (
              <option key={shot.id} value={shot.id}>
                photo {shot.sequence}
                {shot.caption !== '' && `, ${shot.caption}`}
              </option>
            ))}
          </select>
        )}
      </div>
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
