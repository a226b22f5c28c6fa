import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { call, wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import laidOut from '../ui/panes.module.css';
import { Waiting } from '../ui/Waiting.tsx';
import { countWords } from '../ui/words.ts';
import { GapList } from './GapList.tsx';
import { IssueRow } from './IssueRow.tsx';
import { ReportLeaf } from './ReportLeaf.tsx';
import styles from './ReportPage.module.css';
import { VerifyDrop } from './VerifyDrop.tsx';

/** The real pages, beside the list of what is missing; a line of the list jumps to where it is mended. */
export function ReportPage({ record }: { readonly record: VisitRecord }) {
  const visitId = record.visit.id;
  const preview = useAnswer('report.preview', { visitId }, { keepPrevious: true });
  const missing = preview.data?.missing ?? [];
  const needed = missing.filter((gap) => gap.needed);
  const others = missing.filter((gap) => !gap.needed);
  return (
    <div className={classNames(laidOut.panes, styles.panes)}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: pages are scrolled through by keyboard */}
      <section className={styles.desk} aria-label="The pages" tabIndex={0}>
        {preview.data === undefined && !preview.isError && <Waiting words="Setting the pages ..." />}
        {preview.isError && (
          <ErrorNote {...wordsOf(preview.error)}>
            <Button onPress={() => void preview.refetch()}>Set them again</Button>
          </ErrorNote>
        )}
        {preview.data?.pages.map((svg, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
          <ReportLeaf key={index} svg={svg} number={index + 1} of={preview.data.pages.length} />
        ))}
      </section>
      <aside className={classNames(laidOut.side, styles.side)} aria-label="The report">
        <h2>Condition report</h2>
        <p className="soft">
          A draft: it says so on every page and takes no number.
          {preview.data !== undefined && ` ${countWords(preview.data.pages.length, 'page')}.`}
        </p>
        <PrintRow record={record} />
        <IssueRow record={record} needed={needed} />
        {preview.data !== undefined && missing.length === 0 && <p className={styles.nothing}>Nothing is missing.</p>}
        <GapList record={record} heading="Needed before it is issued" gaps={needed} />
        <GapList record={record} heading="Would help its reader" gaps={others} />
        <VerifyDrop />
      </aside>
    </div>
  );
}

const fileName = ({ machine, visit }: VisitRecord): string =>
  `${[machine.kind, machine.serial, visit.date].join(' ').replace(/[^\p{L}\p{N} .-]+/gu, '-')}, draft.pdf`;

function PrintRow({ record }: { readonly record: VisitRecord }) {
  const print = useChange('report.print');
  const [written, setWritten] = useState<{ path: string; pages: number } | null>(null);
  const [error, setError] = useState<unknown>(null);
  const write = async () => {
    setError(null);
    setWritten(null);
    try {
      const chosen = await call('shell.choosePdf', { suggestedName: fileName(record) });
      if (chosen !== null) setWritten(await print.runOrThrow({ visitId: record.visit.id, token: chosen.token }));
    } catch (thrown) {
      setError(thrown);
    }
  };
  return (
    <div className={styles.print}>
      <Button look="primary" onPress={() => void write()} disabled={print.isRunning}>
        {print.isRunning ? 'Writing it ...' : 'Write the draft as PDF'}
      </Button>
      {written !== null && (
        <p role="status">
          {countWords(written.pages, 'page')} written to <span className={styles.path}>{written.path}</span>{' '}
          <Button look="link" onPress={() => void call('shell.showFile', { path: written.path }).catch(setError)}>
            Open it
          </Button>
        </p>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </div>
  );
}
