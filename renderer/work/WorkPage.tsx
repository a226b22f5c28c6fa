import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { VisitWork } from '../../shared-lib/contract/work.ts';
import { type Outcome, outcomes, outcomeWords } from '../../shared-lib/work/records.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import laidOut from '../ui/panes.module.css';
import { Waiting } from '../ui/Waiting.tsx';
import { HandOverPane } from './HandOverPane.tsx';
import { WorkItemBlock } from './WorkItemBlock.tsx';
import styles from './WorkPage.module.css';

/** What was done against the choice that was taken, what went in, what proves it, and what is said when the machine goes. */
export function WorkPage({ record }: { readonly record: VisitRecord }) {
  const answer = useAnswer('work.get', { visitId: record.visit.id });
  if (answer.data === undefined) {
    if (!answer.isError) return <Waiting words="Opening the work ..." />;
    return (
      <div className={styles.failed}>
        <ErrorNote {...wordsOf(answer.error)}>
          <Button onPress={() => void answer.refetch()}>Ask again</Button>
        </ErrorNote>
      </div>
    );
  }
  return (
    <div className={classNames(laidOut.panes, laidOut.underPanels, styles.panes)}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long list is scrolled through by keyboard */}
      <section className={laidOut.desk} aria-label="The work done" tabIndex={0}>
        <WorkLeaf record={record} work={answer.data} />
      </section>
      <HandOverPane record={record} work={answer.data} />
    </div>
  );
}

function WorkLeaf({ record, work }: { readonly record: VisitRecord; readonly work: VisitWork }) {
  const visitId = record.visit.id;
  const add = useChange('work.add');
  const [addedId, setAddedId] = useState<string | null>(null);
  const planned = new Set(work.planned.map(({ findingId }) => findingId));
  const spokenOf = new Set(work.items.map(({ findingId }) => findingId));
  const others = record.standing.lines.filter(({ findingId }) => !planned.has(findingId) && !spokenOf.has(findingId));
  const write = (findingId: string | undefined, outcome: Outcome) => {
    const words = record.findings.find(({ id }) => id === findingId)?.actionWords ?? '';
    add.run({ visitId, outcome, words, ...(findingId === undefined ? {} : { findingId }) }, ({ id }) => setAddedId(id));
  };
  return (
    <article className={styles.leaf}>
      <header className={styles.head}>
        <h1>The work done</h1>
      </header>
      {work.planned.length > 0 && (
        <section aria-label="Agreed, not written down yet">
          <h2 className={styles.heading}>Agreed, not written down yet</h2>
          <ul>
            {record.standing.lines
              .filter(({ findingId }) => planned.has(findingId))
              .map(({ findingId, number, tier, state, title }) => (
                <li key={findingId} className={styles.planned}>
                  <TagPlate number={number} tier={tier} state={state} label={`Finding ${number}:`} />
                  <span className={styles.title}>{title}</span>
                  <span className={styles.row}>
                    {outcomes.map((outcome) => (
                      <Button
                        key={outcome}
                        label={`Finding ${number}: ${outcomeWords[outcome]}`}
                        disabled={add.isRunning}
                        onPress={() => write(findingId, outcome)}
                      >
                        {outcomeWords[outcome]}
                      </Button>
                    ))}
                  </span>
                </li>
              ))}
          </ul>
        </section>
      )}
      {work.items.length === 0 && work.planned.length === 0 && (
        <p className={styles.empty}>
          {work.planned.length === 0 && record.choices?.choices.some(({ chosen }) => chosen)
            ? 'The choice that was taken mends nothing. Work that was done all the same is written down here.'
            : 'Nothing is agreed yet: what the owner takes on the choices page stands here to be done. Work can be written down before.'}
        </p>
      )}
      {work.items.map((item) => (
        <WorkItemBlock
          key={item.id}
          item={item}
          record={record}
          isNew={item.id === addedId}
          isUnproven={work.unproven.includes(item.id)}
        />
      ))}
      {add.error !== null && <ErrorNote {...wordsOf(add.error)} />}
      <div className={styles.row}>
        {others.length > 0 && (
          <select
            className={styles.select}
            aria-label="Write work on another finding"
            value=""
            onChange={(event) => event.target.value !== '' && write(event.target.value, 'done')}
          >
            <option value="">work on another finding ...</option>
            {others.map(({ findingId, number, title }) => (
              <option key={findingId} value={findingId}>
                {number}: {title}
              </option>
            ))}
          </select>
        )}
        <Button onPress={() => write(undefined, 'done')} disabled={add.isRunning}>
          Write other work
        </Button>
      </div>
    </article>
  );
}
