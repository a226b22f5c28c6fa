import { errorSentence } from '../../shared-lib/wording/errors.ts';
import { type ImportProgress, putAwayImport, useImports } from '../api/imports.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Progress } from '../ui/Progress.tsx';
import { countWords } from '../ui/words.ts';
import styles from './ImportProgressList.module.css';

/** The imports of a visit: how far they are, what was refused and why. */
export function ImportProgressList({ visitId }: { readonly visitId: string }) {
  return useImports(visitId).map((job) => <Job key={job.jobId} job={job} />);
}

function Job({ job }: { readonly job: ImportProgress }) {
  const stop = useChange('shot.stopTaking');
  const { accepted, refused, ended, done, of } = job;
  const known = accepted.filter(({ alreadyHere }) => alreadyHere).length;
  const remarked = accepted.filter(({ remark }) => remark !== null);
  if (ended === 'no') {
    return (
      <Progress
        label="Taking in"
        done={done}
        of={of}
        words={`photo ${Math.min(done + 1, of)} of ${of}`}
        onStop={() => stop.run({ jobId: job.jobId })}
      />
    );
  }
  return (
    <section className={styles.job} aria-label="Photos taken in">
      <header className={styles.head}>
        <p role="status">
          <strong>
            {countWords(of, 'photo')} offered, {accepted.length} taken in
          </strong>
          {ended === 'stopped' && <span className="soft"> Stopped; the rest was not touched.</span>}
          {known > 0 && <span className="soft"> {known} had been taken in before.</span>}
        </p>
        <Button look="link" onPress={() => putAwayImport(job.jobId)}>
          Put this away
        </Button>
      </header>
      {refused.length > 0 && (
        <>
          <p className="soft">
            {refused.length === 1
              ? 'The other one is still where it was.'
              : `The ${refused.length} others are still where they were.`}{' '}
            Nothing was changed in {refused.length === 1 ? 'it' : 'them'}.
          </p>
          <ul className={styles.refused}>
            {refused.map(({ name, error }) => (
              <li key={name} className={styles.file}>
                <RefusedPicture />
                <span>
                  <strong className={styles.name}>{name}</strong>
                  <span className={`${styles.why} soft`}>{errorSentence(error).happened}</span>
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      {remarked.length > 0 && (
        <ul className={styles.refused}>
          {remarked.map(({ shotId, name, remark }) => (
            <li key={shotId} className={styles.file}>
              <span />
              <span>
                <strong className={styles.name}>{name}</strong>
                <span className={`${styles.why} soft`}>Taken in: {remark}.</span>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function RefusedPicture() {
  return (
    <svg className={styles.picture} viewBox="0 0 58 44" aria-hidden="true">
      <rect
        x="1"
        y="1"
        width="56"
        height="42"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.5"
        strokeDasharray="5 4"
      />
      <path d="M15 12 43 32M43 12 15 32" stroke="currentColor" strokeWidth="1.5" />
    </svg>
  );
}
