import { useState } from 'react';
import type { VerifiedReport } from '../../shared-lib/contract/reports.ts';
import { bridge } from '../api/bridge.ts';
import { call, wordsOf } from '../api/client.ts';
import { useDroppedFiles } from '../photos/use-dropped-files.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './ReportPage.module.css';

interface Verdict {
  readonly name: string;
  readonly result: VerifiedReport;
}

const stateWords = {
  genuine: 'genuine: sealed by this shop, not changed since',
  altered: 'altered: it is not as it was sealed',
  "another shop's": 'another shop’s: its seal holds, but it is not this shop’s',
  'not signed': 'not signed: a draft, or not one of ours',
} as const;

const whichWords = ({ number, revision, replacedBy }: VerifiedReport): string => {
  if (number === null) return '';
  const newer = replacedBy === null ? '' : `; revision ${replacedBy} has taken its place`;
  return ` Report ${number}, revision ${revision}${newer}.`;
};

/** A PDF dropped here is asked whether it is one of ours and untouched. */
export function VerifyDrop() {
  const [verdict, setVerdict] = useState<Verdict | null>(null);
  const [error, setError] = useState<unknown>(null);
  const verify = async (files: readonly File[]) => {
    setError(null);
    setVerdict(null);
    const [file] = files;
    if (file === undefined) return;
    try {
      const [token] = await bridge.offerFiles([file]);
      if (token !== undefined) setVerdict({ name: file.name, result: await call('report.verify', { token }) });
    } catch (thrown) {
      setError(thrown);
    }
  };
  const isOver = useDroppedFiles(
    (files) => void verify(files),
    () => undefined,
  );
  return (
    <section className={styles.verify} aria-label="Check a report" data-over={isOver || undefined}>
      <p className="soft small">
        {isOver ? 'Let go: its seal is checked.' : 'Drop a PDF on this page to see whether it is genuine.'}
      </p>
      {verdict !== null && (
        <p role="status">
          <strong>{verdict.name}</strong> is {stateWords[verdict.result.state]}.{whichWords(verdict.result)}
        </p>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
