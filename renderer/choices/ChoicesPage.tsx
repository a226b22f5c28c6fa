import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import laidOut from '../ui/panes.module.css';
import { Waiting } from '../ui/Waiting.tsx';
import styles from './ChoicesPage.module.css';
import { ChoiceTable } from './ChoiceTable.tsx';
import { ReadBackLeaf } from './ReadBackLeaf.tsx';
import { subjectOf } from './subject.ts';
import { ToDecide } from './ToDecide.tsx';

interface ChoicesPageProps {
  readonly record: VisitRecord;
  /** What is being read back: a finding or a choice; neither while the choices are laid side by side. */
  readonly findingId: string | undefined;
  readonly choiceId: string | undefined;
}

/** What can be done, what each choice leaves, and what the owner decides. */
export function ChoicesPage({ record, findingId, choiceId }: ChoicesPageProps) {
  const answer = useAnswer('choices.get', { visitId: record.visit.id });
  if (answer.data === undefined) {
    if (!answer.isError) return <Waiting words="Laying out the choices ..." />;
    return (
      <div className={styles.failed}>
        <ErrorNote {...wordsOf(answer.error)}>
          <Button onPress={() => void answer.refetch()}>Ask again</Button>
        </ErrorNote>
      </div>
    );
  }
  const choices = answer.data;
  const subject = subjectOf(record, choices, { findingId, choiceId });
  if (subject !== null)
    return <ReadBackLeaf key={findingId ?? choiceId} record={record} choices={choices} subject={subject} />;
  return (
    <div className={classNames(laidOut.panes, laidOut.underPanels, styles.panes)}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled through by keyboard */}
      <section className={laidOut.desk} aria-label="The choices" tabIndex={0}>
        <ChoiceTable record={record} choices={choices} />
      </section>
      <ToDecide record={record} choices={choices} reading={null} />
    </div>
  );
}
