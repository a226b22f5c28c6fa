import { Fragment, useMemo, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { notebookEntries } from '../../shared-lib/notebook/entries.ts';
import { gapsOf } from '../../shared-lib/notebook/gaps.ts';
import { listed } from '../../shared-lib/wording/listed.ts';
import { useAppState } from '../app/app-state.ts';
import { go } from '../app/place.ts';
import { FindingPane } from '../findings/FindingPane.tsx';
import { TakePhotosLine } from '../photos/TakePhotosLine.tsx';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import laidOut from '../ui/panes.module.css';
import { dateOnClock } from '../ui/shop-clock.ts';
import { dateWords, hoursWords } from '../ui/words.ts';
import { BeforeSection } from './BeforeSection.tsx';
import { DayLine } from './DayLine.tsx';
import { EntryLine } from './EntryLine.tsx';
import { GapLine } from './GapLine.tsx';
import { IntakePanel } from './IntakePanel.tsx';
import styles from './NotebookPage.module.css';
import { ScopePanel } from './ScopePanel.tsx';
import { StandingPane } from './StandingPane.tsx';
import { VisitPanel } from './VisitPanel.tsx';

interface NotebookPageProps {
  readonly record: VisitRecord;
  readonly findingId: string | undefined;
}

type Sheet = 'visit' | 'received' | 'scope';

/** Blank lines shown at once; the page is not a form. The rest of what was agreed waits behind one link. */
const mostGaps = 5;

const useWords = ({ road, slope, peopleNear }: VisitRecord['visit']['use']): string => {
  const words = [road ? 'road' : '', slope ? 'slopes' : '', peopleNear ? 'people near' : ''].filter(
    (word) => word !== '',
  );
  return words.length === 0
    ? 'No road, no slope, nobody near'
    : listed(words).replace(/^./, (letter) => letter.toUpperCase());
};

/** The visit as a page of a bench notebook, the standing always beside it. */
export function NotebookPage({ record, findingId }: NotebookPageProps) {
  const { shop } = useAppState();
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const entries = useMemo(() => notebookEntries(record, shop.units), [record, shop.units]);
  const gaps = useMemo(() => gapsOf(record), [record]);
  const { visit } = record;
  const openFinding = (id: string | undefined) =>
    go({ name: 'visit', visitId: visit.id, page: 'page', ...(id === undefined ? {} : { findingId: id }) });

  return (
    <div className={classNames(laidOut.panes, laidOut.underPanels, styles.panes)}>
      <div className={laidOut.desk}>
        <article className={styles.leaf} aria-label="Notebook page">
          <header className={styles.head}>
            <h2 className={styles.date}>{dateWords(visit.date)}</h2>
            <p className={styles.facts}>
              {record.trueHours === null ? 'hours not read' : hoursWords(record.trueHours)}
              {visit.meter.estimate && ' by estimate'}
              <span className={styles.use}>{useWords(visit.use)}</span>
            </p>
            <span className={styles.edits}>
              <Button look="link" onPress={() => setSheet('visit')}>
                Change
              </Button>
              <Button look="link" onPress={() => setSheet('received')}>
                Received
              </Button>
              <Button look="link" onPress={() => setSheet('scope')}>
                What was agreed
              </Button>
            </span>
          </header>
          <ol className={styles.entries} aria-label="In the order it happened">
            {entries.map((entry, index) => {
              const date = dateOnClock(entry.atMs, shop.timeZone);
              const before = entries[index - 1];
              const isNewDay = date !== (before ? dateOnClock(before.atMs, shop.timeZone) : visit.date);
              return (
                <Fragment key={`${entry.kind}/${entry.id}`}>
                  {isNewDay && <DayLine date={date} />}
                  <EntryLine entry={entry} record={record} onFinding={openFinding} />
                </Fragment>
              );
            })}
          </ol>
          <BeforeSection record={record} onFinding={openFinding} />
          <TakePhotosLine visitId={visit.id} />
          {gaps.length > 0 && (
            <ol className={styles.entries} aria-label="Still missing">
              {gaps.slice(0, mostGaps).map((gap, index) => (
                <GapLine
                  key={gap.id}
                  gap={gap}
                  visitId={visit.id}
                  inHand={index === 0}
                  onFinding={openFinding}
                  onVisit={() => setSheet('visit')}
                />
              ))}
            </ol>
          )}
          {gaps.length > mostGaps && (
            <p className={styles.more}>
              {gaps.length - mostGaps} more lines are blank.{' '}
              <Button look="link" onPress={() => setSheet('scope')}>
                What was agreed
              </Button>
            </p>
          )}
        </article>
      </div>
      {findingId === undefined ? (
        <StandingPane record={record} onFinding={openFinding} />
      ) : (
        <FindingPane record={record} findingId={findingId} onClose={() => openFinding(undefined)} />
      )}
      {sheet === 'visit' && <VisitPanel record={record} onClose={() => setSheet(null)} />}
      {sheet === 'received' && <IntakePanel record={record} onClose={() => setSheet(null)} />}
      {sheet === 'scope' && <ScopePanel record={record} onClose={() => setSheet(null)} />}
    </div>
  );
}
