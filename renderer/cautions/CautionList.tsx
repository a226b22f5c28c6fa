import type { CalledCaution } from '../../shared-lib/cautions/cautions-for.ts';
import styles from './CautionPanel.module.css';
import { CautionPanel } from './CautionPanel.tsx';

interface CautionListProps {
  readonly cautions: readonly CalledCaution[];
  /** Why they stand there, where that is not plain from the place. */
  readonly because?: string | undefined;
}

/** The cautions that stand before a sheet, a step or a finding; nothing at all where none is called. */
export function CautionList({ cautions, because }: CautionListProps) {
  if (cautions.length === 0) return null;
  return (
    <div className={styles.list}>
      {cautions.map(({ caution }) => (
        <CautionPanel key={caution.id} caution={caution} because={because} />
      ))}
    </div>
  );
}
