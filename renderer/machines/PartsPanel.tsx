import { useState } from 'react';
import type { MachinePage, MachineVisit } from '../../shared-lib/contract/machines.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Panel } from '../ui/Panel.tsx';
import { FittedPartForm } from './FittedPartForm.tsx';
import { FittedPartLine } from './FittedPartLine.tsx';
import styles from './MachinePlace.module.css';
import type { PartDraft } from './part-draft.ts';

interface PartsPanelProps {
  readonly page: MachinePage;
  /** Newest first. */
  readonly visits: readonly MachineVisit[];
  readonly onClose: () => void;
}

/** Parts that were changed: what was measured before does not count for them. */
export function PartsPanel({ page, visits, onClose }: PartsPanelProps) {
  const fresh: PartDraft = { path: null, kind: null, visitId: visits[0]?.visit.id ?? null, hours: null };
  const [draft, setDraft] = useState<PartDraft | null>(null);
  const fit = useChange('part.fit');
  const { layout } = page.layout;
  const inFirst = page.fittedParts
    .toReversed()
    .toSorted((a, b) => Number(a.removedVisitId !== null) - Number(b.removedVisitId !== null));
  return (
    <Panel title="Fitted parts" onClose={onClose}>
      <p className="soft">
        A part that is changed begins a new life: sizes, cracks and trends are never compared across the change.
      </p>
      {inFirst.length === 0 && draft === null && <p>None is written down yet.</p>}
      {inFirst.length > 0 && (
        <ul className={styles.parts}>
          {inFirst.map((part) => (
            <FittedPartLine key={part.id} part={part} layout={layout} visits={visits} />
          ))}
        </ul>
      )}
      {draft === null ? (
        <div>
          <Button onPress={() => setDraft(fresh)}>A part was fitted</Button>
        </div>
      ) : (
        <FittedPartForm
          layout={layout}
          visits={visits}
          draft={draft}
          onChange={setDraft}
          action="Write the part down"
          isRunning={fit.isRunning}
          error={fit.error}
          onWrite={(written) => fit.run({ machineId: page.machine.id, ...written }, () => setDraft(null))}
          onLeave={() => {
            fit.forgetError();
            setDraft(null);
          }}
        />
      )}
    </Panel>
  );
}
