import { useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { LayoutForm } from './LayoutForm.tsx';

interface LayoutPanelProps {
  readonly machineId: string;
  readonly layout: Layout;
  readonly onClose: () => void;
}

/** A layout is handed over as a whole: half of one would orphan places. */
export function LayoutPanel({ machineId, layout, onClose }: LayoutPanelProps) {
  const [draft, setDraft] = useState(layout);
  const setLayout = useChange('machine.setLayout');
  const isChanged = JSON.stringify(draft) !== JSON.stringify(layout);
  return (
    <Panel
      title="Engine and parts"
      onClose={onClose}
      wide
      foot={
        <>
          <Button
            look="primary"
            disabled={!isChanged || setLayout.isRunning}
            onPress={() => setLayout.run({ id: machineId, layout: draft }, onClose)}
          >
            Use this layout
          </Button>
          <p className="soft small">
            Open visits go over to it; visits that have left keep the one they were worked on.
          </p>
        </>
      }
    >
      {setLayout.error !== null && <ErrorNote {...wordsOf(setLayout.error)} />}
      <LayoutForm layout={draft} onChange={setDraft} />
    </Panel>
  );
}
