import { useMemo } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { nextTestRule, nextTests } from '../../shared-lib/suspicions/next-test.ts';
import type { SuspicionTable } from '../../shared-lib/suspicions/table.ts';
import { whyNext } from '../../shared-lib/suspicions/why-next.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import styles from './CausesPage.module.css';

interface NextTestsProps {
  readonly record: VisitRecord;
  readonly table: SuspicionTable;
  readonly onShowUnheld: () => void;
}

/** What to test next that would tell most, and what was not held against anything yet. */
export function NextTests({ record, table, onShowUnheld }: NextTestsProps) {
  const tests = useMemo(() => nextTests(record), [record]);
  const suspicions = record.choices?.suspicions ?? [];
  const open = table.columns.filter(({ state }) => state === 'open');
  const unheld = table.sources.filter(({ id }) => !table.columns.some(({ cells }) => cells.has(id)));
  if (table.columns.length === 0) return null;
  return (
    <section aria-label="What to test next">
      <h2 className={styles.ruled}>What to test next</h2>
      {open.length === 0 && <p className="soft">No suspicion is open.</p>}
      {open.length > 0 && tests.length === 0 && (
        <p className="soft">
          No sheet or method that is left is known to show an open suspicion. Say where it would be, and of what kind.
        </p>
      )}
      <ol className={styles.tests}>
        {tests.map((test) => (
          <li key={test.key}>
            <span>
              <strong>{test.name}</strong>
              {test.again !== '' && `, again, ${test.again}`}
              {test.isOpened && ', once it is opened'}
              <span className={styles.small}>{whyNext(test, suspicions)}</span>
            </span>
            {test.open !== null && <OpenSheet visitId={record.visit.id} name={test.name} {...test.open} />}
          </li>
        ))}
      </ol>
      {tests.length > 0 && <p className={styles.small}>{nextTestRule}</p>}
      {open.length > 0 && unheld.length > 0 && (
        <p className={styles.row}>
          <span className={styles.small}>
            {unheld.length === 1 ? 'One line' : `${unheld.length} lines`} of the table{' '}
            {unheld.length === 1 ? 'is' : 'are'} not held against any suspicion yet.
          </span>
          <Button look="link" onPress={onShowUnheld}>
            Show
          </Button>
        </p>
      )}
    </section>
  );
}

interface OpenSheetProps {
  readonly visitId: string;
  readonly name: string;
  readonly sheet: string;
  readonly at: string | null;
}

function OpenSheet({ visitId, name, sheet, at }: OpenSheetProps) {
  return (
    <Button
      look="link"
      label={`Open the sheet: ${name}`}
      onPress={() => go({ name: 'visit', visitId, page: 'sheets', sheet, ...(at === null ? {} : { at }) })}
    >
      Open the sheet
    </Button>
  );
}
