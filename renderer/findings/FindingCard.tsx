import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { wordsOf } from '../api/client.ts';
import { FindingCautions } from '../cautions/FindingCautions.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import { AfterSection } from './AfterSection.tsx';
import { CauseSection } from './CauseSection.tsx';
import styles from './FindingCard.module.css';
import { FindingHead } from './FindingHead.tsx';
import { FurtherSection } from './FurtherSection.tsx';
import { HarmSection } from './HarmSection.tsx';
import { ProofSection } from './ProofSection.tsx';
import { SizeSection } from './SizeSection.tsx';
import { SureSection } from './SureSection.tsx';
import { useFindingChange } from './use-finding-change.ts';
import { WaitSection } from './WaitSection.tsx';
import { WhatSection } from './WhatSection.tsx';
import { WhereSection } from './WhereSection.tsx';

export interface FindingCardProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly shotId?: string | undefined;
  readonly onClose: () => void;
  readonly onMark?: (() => void) | undefined;
}

/** Everything that can be said of a finding, in the order it is best said. Nothing is required; what is missing is named. */
export function FindingCard({ record, finding, shotId, onClose, onMark }: FindingCardProps) {
  const { edit, error } = useFindingChange(finding.id);
  const line = record.standing.lines.find(({ findingId }) => findingId === finding.id);
  const isObservation = finding.kind === 'observation';
  const section = { record, finding, edit };
  return (
    <>
      <FindingHead record={record} finding={finding} line={line} onClose={onClose} />
      <div className={styles.body}>
        {error !== null && <ErrorNote {...wordsOf(error)} />}
        {line !== undefined && line.missing.length > 0 && (
          <p className={styles.small}>Still missing: {line.missing.join('; ')}.</p>
        )}
        <WhereSection {...section} />
        {!isObservation && <WhatSection {...section} />}
        <FindingCautions finding={finding} record={record} />
        <TextField
          label={isObservation ? 'What was seen, heard or said' : 'In your own words'}
          lines="many"
          value={finding.words}
          onCommit={(words) => edit({ words })}
          maxLength={2000}
        />
        {!isObservation && <SureSection {...section} />}
        <ProofSection record={record} finding={finding} shotId={shotId} onMark={onMark} />
        {!isObservation && (
          <>
            <SizeSection {...section} />
            {finding.state !== 'none-found' && (
              <>
                <HarmSection {...section} line={line} />
                <WaitSection {...section} />
                <AfterSection {...section} />
                <CauseSection record={record} finding={finding} />
              </>
            )}
          </>
        )}
        <Choice
          label="It is"
          value={finding.kind}
          onChoose={(kind) => edit({ kind })}
          options={[
            { value: 'condition', words: 'a condition', note: 'ranked' },
            { value: 'observation', words: 'an observation', note: 'noted, not ranked' },
          ]}
        />
        <FurtherSection record={record} finding={finding} line={line} onClose={onClose} />
      </div>
    </>
  );
}
