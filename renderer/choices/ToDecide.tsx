import { decisionWords } from '../../shared-lib/choices/words.ts';
import type { VisitChoices } from '../../shared-lib/contract/choices.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { classNames } from '../ui/class-names.ts';
import laidOut from '../ui/panes.module.css';
import { dateWords } from '../ui/words.ts';
import styles from './ChoicesPage.module.css';

interface ToDecideProps {
  readonly record: VisitRecord;
  readonly choices: VisitChoices;
  /** The finding whose statement is open. */
  readonly reading: string | null;
}

/** What is left to decide, and what has been decided. */
export function ToDecide({ record, choices, reading }: ToDecideProps) {
  return (
    <aside className={classNames(laidOut.side, styles.side)} aria-label="Decisions">
      <DecidedBefore choices={choices} reading={reading} />
      <LeftToDecide record={record} choices={choices} reading={reading} />
      <Decided record={record} choices={choices} />
    </aside>
  );
}

export function LeftToDecide({ record, choices, reading }: ToDecideProps) {
  const open = record.standing.lines.filter(({ findingId }) => choices.undecided.includes(findingId));
  const changed = new Set(choices.carriedOver.flatMap((each) => (each.newDecision ? [each.findingId] : [])));
  return (
    <section aria-label="Left to decide">
      <h2 className={styles.ruled}>Left to decide</h2>
      {open.length === 0 && <p className="soft">Nothing: every ranked finding has a decision.</p>}
      <ul>
        {open.map(({ findingId, number, tier, state, title }) => (
          <li key={findingId} className={styles.line}>
            <button
              type="button"
              className={styles.jump}
              onClick={() => go({ name: 'visit', visitId: record.visit.id, page: 'choices', findingId })}
            >
              <TagPlate number={number} tier={tier} state={state} label={`Finding ${number}:`} />
              <span className={styles.title}>{title}</span>
              {findingId === reading && <span className="soft">being read</span>}
              {findingId !== reading && changed.has(findingId) && <span className="soft">changed since</span>}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What was decided at an earlier visit of the same condition, and whether that still holds. */
export function DecidedBefore({ choices, reading }: Omit<ToDecideProps, 'record'>) {
  const carried = choices.carriedOver.find(({ findingId }) => findingId === reading);
  if (carried === undefined) return null;
  return (
    <section aria-label="Decided before">
      <h2 className={styles.ruled}>Decided before</h2>
      {carried.decidedBefore.map(({ date, decision, completed, words, by }) => (
        <div key={`${date} ${decision}`} className={styles.decided}>
          <strong>
            {dateWords(date)}, {decisionWords[decision]}
            {completed !== '' && `, ${completed}`}
          </strong>
          <p className="soft">
            {words !== '' && <em>“{words}” </em>}
            {by}
          </p>
        </div>
      ))}
      <p className="soft">
        First told on {dateWords(carried.firstDate)}, {carried.timesTold} times by now.{' '}
        {carried.newDecision
          ? 'What was told then has changed, so that decision does not cover this.'
          : 'It stands as it was told then.'}
      </p>
    </section>
  );
}

function Decided({ record, choices }: Pick<ToDecideProps, 'record' | 'choices'>) {
  if (choices.decisions.length === 0) return null;
  const nameOf = (findingId: string | null, choiceId: string | null) => {
    const finding = record.findings.find(({ id }) => id === findingId);
    if (finding !== undefined) return `Finding ${finding.number}`;
    return `“${choices.choices.find(({ id }) => id === choiceId)?.name ?? 'a choice'}”`;
  };
  return (
    <section aria-label="Decided">
      <h2 className={styles.ruled}>Decided</h2>
      <ul>
        {choices.decisions.map(({ id, findingId, choiceId, decision, completed, words, by, covers }) => (
          <li key={id} className={styles.decided}>
            <strong>
              {nameOf(findingId, choiceId)}: {decisionWords[decision]}
            </strong>
            {completed !== '' && `, ${completed}`}
            <span className="soft">
              {' '}
              {by}
              {words !== '' && words !== completed && `: “${words}”`}
            </span>
            {!covers && <p className={styles.changed}>What was told has changed since; it needs a new decision.</p>}
          </li>
        ))}
      </ul>
    </section>
  );
}
