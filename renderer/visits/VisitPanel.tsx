import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { wordsFor, wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { meterInNow } from '../machines/meter-now.ts';
import { VisitForm } from '../machines/VisitForm.tsx';
import { isDate, type VisitDraft, visitInput } from '../machines/visit-draft.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';

interface VisitPanelProps {
  readonly record: VisitRecord;
  readonly onClose: () => void;
}

const draftOf = ({ visit }: VisitRecord): VisitDraft => ({
  date: visit.date,
  hours: visit.meter.typed,
  isEstimate: visit.meter.estimate,
  complaint: visit.complaint,
  use: visit.use,
});

/** What was said when it came in, put right; and the end of the stay. */
export function VisitPanel({ record, onClose }: VisitPanelProps) {
  const { visit } = record;
  const [draft, setDraft] = useState(() => draftOf(record));
  const change = useChange('visit.change');
  const meterId = visit.meter.meterId ?? meterInNow(record.meters)?.id ?? null;
  const drafted = () => {
    const { machineId: _machine, meter, ...input } = visitInput(draft, visit.machineId, meterId);
    const blank = { meterId, typed: '', reading: null, estimate: draft.isEstimate };
    return { id: visit.id, ...input, meter: meter ?? blank };
  };
  const write = () => change.run(drafted(), onClose);
  /** With what was put right in the fields: it stood there when the machine left. */
  const leave = () =>
    change.run({ ...drafted(), leftAtMs: visit.leftAtMs === null ? Date.now() : null }, () => {
      if (visit.leftAtMs === null) go({ name: 'machine', machineId: visit.machineId });
    });
  const hoursError = wordsFor('meter', change.error);
  return (
    <Panel
      title="This visit"
      onClose={onClose}
      wide
      foot={
        <>
          <Button look="primary" disabled={change.isRunning || !isDate(draft.date)} onPress={write}>
            Write it down
          </Button>
          <Button look="link" disabled={change.isRunning || !isDate(draft.date)} onPress={leave}>
            {visit.leftAtMs === null ? 'The machine has gone out' : 'It is still here'}
          </Button>
        </>
      }
    >
      <VisitForm draft={draft} onChange={setDraft} underHours={hoursError && <ErrorNote {...hoursError} />} />
      {change.error !== null && hoursError === undefined && <ErrorNote {...wordsOf(change.error)} />}
    </Panel>
  );
}
