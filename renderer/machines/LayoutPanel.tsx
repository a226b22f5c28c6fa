import { useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { type CallError, wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import styles from './LayoutForm.module.css';
import { LayoutForm } from './LayoutForm.tsx';
import { orphanWords } from './orphan-words.ts';

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
      {setLayout.error !== null && <LayoutRefused error={setLayout.error} layout={layout} />}
      <LayoutForm layout={draft} onChange={setDraft} />
    </Panel>
  );
}

/** The places that would be lost, in words, on the layout that still holds. */
function LayoutRefused({ error, layout }: { readonly error: CallError; readonly layout: Layout }) {
  const places = orphanWords(error.wire, layout);
  if (places.length === 0) return <ErrorNote {...wordsOf(error)} />;
  return (
    <ErrorNote
      happened="With this layout there would be no such place any more:"
      kept="The layout stays as it was. Findings, photos and agreed items stand on these places; move those first."
    >
      <ul className={styles.places}>
        {places.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </ErrorNote>
  );
}
