import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { FindingCard } from './FindingCard.tsx';
import styles from './FindingPane.module.css';

interface FindingPaneProps {
  readonly record: VisitRecord;
  readonly findingId: string;
  /** The photo on the stage, where there is one. */
  readonly shotId?: string | undefined;
  readonly onClose: () => void;
  /** Takes the tool that this finding is marked with into the hand. */
  readonly onMark?: (() => void) | undefined;
}

/** The card of the finding in hand, beside the page or the photo. */
export function FindingPane({ record, findingId, shotId, onClose, onMark }: FindingPaneProps) {
  const finding = record.findings.find(({ id }) => id === findingId);
  return (
    <aside
      className={styles.pane}
      aria-label={finding === undefined ? 'Finding' : `Finding ${finding.number}`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return;
        event.stopPropagation();
        onClose();
      }}
    >
      {finding === undefined || finding.binned ? (
        <p className={styles.gone}>
          This finding is in the bin.{' '}
          <button type="button" className={styles.link} onClick={onClose}>
            Back
          </button>
        </p>
      ) : (
        <FindingCard
          key={finding.id}
          record={record}
          finding={finding}
          shotId={shotId}
          onClose={onClose}
          onMark={onMark}
        />
      )}
    </aside>
  );
}
