import { useState } from 'react';
import type { ReportGap } from '../../shared-lib/contract/reports.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { call, wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Waiting } from '../ui/Waiting.tsx';
import { countWords } from '../ui/words.ts';
import { IssueRow } from './IssueRow.tsx';
import { ReportLeaf } from './ReportLeaf.tsx';
import styles from './ReportPage.module.css';
import { VerifyDrop } from './VerifyDrop.tsx';

/** The real pages, beside the list of what is missing; a line of the list jumps to where it is mended. */
export function ReportPage({ record }: { readonly record: VisitRecord }) {
  const visitId = record.visit.id;
  const preview = useAnswer('report.preview', { visitId }, { keepPrevious: true });
  return (
    <div className={styles.panes}>
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
      <aside className={styles.side} aria-label="The report">
        <h2>Condition report</h2>
        <p className="soft">
          A draft: it says so on every page and takes no number.
          {preview.data !== undefined && ` ${countWords(preview.data.pages.length, 'page')}.`}
        </p>
        <PrintRow record={record} />
        <IssueRow record={record} />
        {preview.data !== undefined && <Gaps record={record} gaps={preview.data.missing} />}
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
        <p role="status" className={styles.written}>
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

function Gaps({ record, gaps }: { readonly record: VisitRecord; readonly gaps: readonly ReportGap[] }) {
  const jump = ({ at }: ReportGap) => {
    const visitId = record.visit.id;
    switch (at.place) {
      case 'finding':
        return go({ name: 'visit', visitId, page: 'page', findingId: at.id });
      case 'shot':
        return go({ name: 'visit', visitId, page: 'photos', shotId: at.id });
      case 'machine':
        return go({ name: 'machine', machineId: record.machine.id });
      case 'shop':
        return go({ name: 'setup' });
      case 'visit':
      case 'scope':
        return go({ name: 'visit', visitId, page: 'page' });
    }
  };
  if (gaps.length === 0) return <p className={styles.nothing}>Nothing is missing.</p>;
  return (
    <section aria-label="Still missing">
      <h3 className={styles.heading}>Still missing: {gaps.length}</h3>
      <ul>
        {gaps.map((gap) => (
          <li key={`${gap.at.place}/${gap.at.id}/${gap.what}`} className={styles.gap}>
            <button type="button" className={styles.jump} onClick={() => jump(gap)}>
              {gap.what}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
