import { useMemo, useRef, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { type Narrowing, narrowed, wholeTable } from '../../shared-lib/suspicions/narrow.ts';
import { suspicionTable } from '../../shared-lib/suspicions/table.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import laidOut from '../ui/panes.module.css';
import styles from './CausesPage.module.css';
import { ChainView } from './ChainView.tsx';
import { NextTests } from './NextTests.tsx';
import { SuspicionPane } from './SuspicionPane.tsx';
import { SuspicionTableView } from './SuspicionTableView.tsx';
import { TableFilter } from './TableFilter.tsx';
import { WriteLine } from './WriteLine.tsx';

interface CausesPageProps {
  readonly record: VisitRecord;
}

/** From here on a table is longer than a small screen, and its lines can be chosen. */
const longTable = 8;

/** What it could be, held against all that was read, found and seen; and what led to what. */
export function CausesPage({ record }: CausesPageProps) {
  const { shop } = useAppState();
  const { visit } = record;
  const table = useMemo(() => suspicionTable(record, shop.units), [record, shop.units]);
  const [pickedId, setPicked] = useState<string | null>(null);
  const add = useChange('suspicion.add');
  const see = useChange('finding.add');
  const picked = table.columns.find(({ suspicion }) => suspicion.id === pickedId);
  const body = useRef<HTMLTableSectionElement>(null);
  const [narrowing, setNarrowing] = useState(wholeTable);
  // A line that stood when the lines were chosen stays while it is worked on, whatever becomes of it.
  const [kept, setKept] = useState<ReadonlySet<string>>(new Set());
  const sources = useMemo(() => {
    const now = new Set(narrowed(table, narrowing).map(({ id }) => id));
    return table.sources.filter(({ id }) => now.has(id) || kept.has(id));
  }, [table, narrowing, kept]);
  const narrow = (next: Narrowing) => {
    setNarrowing(next);
    setKept(new Set(narrowed(table, next).map(({ id }) => id)));
  };
  const pick = (id: string | null) => {
    setPicked(id);
    if (narrowing.bearsOn !== null) narrow({ ...narrowing, bearsOn: id });
  };
  const error = add.error ?? see.error;
  return (
    <div className={classNames(laidOut.panes, laidOut.underPanels, styles.panes)}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled through by keyboard */}
      <section className={classNames(laidOut.desk, styles.desk)} aria-label="Causes" tabIndex={0}>
        <section className={styles.leaf} aria-label="What it could be">
          <header className={styles.head}>
            <h2>What it could be</h2>
            <WriteLine
              label="A suspicion"
              placeholder="upper hose leaks at its clamp"
              button="List it"
              isRunning={add.isRunning}
              autoFocus={table.columns.length === 0}
              onWrite={(what, onDone) =>
                add.run({ visitId: visit.id, what }, ({ id }) => {
                  setPicked(id);
                  onDone();
                })
              }
            />
          </header>
          {error !== null && <ErrorNote {...wordsOf(error)} />}
          {table.columns.length === 0 ? (
            <p className={styles.empty}>
              List what it could be as soon as the complaint is heard. Each reading, finding and test drive is then held
              against it: for, against, or cannot tell. A wrong turn stays on the page, with what turned it.
            </p>
          ) : (
            <>
              {(table.sources.length > longTable || narrowing !== wholeTable) && (
                <TableFilter
                  table={table}
                  narrowing={narrowing}
                  shown={sources.length}
                  pickedId={pickedId}
                  onNarrow={narrow}
                  onEnterTable={() =>
                    body.current?.querySelector<HTMLElement>('button[data-stop][tabindex="0"]')?.focus()
                  }
                />
              )}
              <SuspicionTableView
                record={record}
                table={table}
                sources={sources}
                pickedId={pickedId}
                onPick={pick}
                body={body}
              />
            </>
          )}
          {table.columns.length > 0 && (
            <WriteLine
              label="Seen, heard, or found on a test drive"
              placeholder="no smoke on the hill, gauge stood at 92"
              button="Write it down"
              isRunning={see.isRunning}
              onWrite={(words, onDone) =>
                see.run({ visitId: visit.id, kind: 'observation', state: 'confirmed', words }, () => {
                  // What was just written is not hidden.
                  narrow(wholeTable);
                  onDone();
                })
              }
            />
          )}
        </section>
        <section className={styles.leaf} aria-label="What led to what">
          <h2>What led to what</h2>
          <ChainView record={record} />
        </section>
      </section>
      <aside className={classNames(laidOut.side, styles.side)} aria-label="One suspicion, and what to test next">
        {picked !== undefined && (
          <SuspicionPane key={picked.suspicion.id} record={record} column={picked} onClose={() => pick(null)} />
        )}
        <NextTests record={record} table={table} onShowUnheld={() => narrow({ ...wholeTable, kind: 'not-held' })} />
      </aside>
    </div>
  );
}
