import { useState } from 'react';
import type { Shop } from '../../shared-lib/model/shop.ts';
import { cardSheet } from '../../shared-lib/wording/card-sheet.ts';
import { call, wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { paperOptions } from '../app/shop-choices.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import styles from './CardPanel.module.css';

/** The sheet with the cards: how it is used, on which paper, and where it is written. */
export function CardPanel({ onClose }: { readonly onClose: () => void }) {
  const { shop } = useAppState();
  const [paper, setPaper] = useState<Shop['paper']>(shop.paper);
  const [path, setPath] = useState<string | null>(null);
  const [error, setError] = useState<unknown>(null);
  const print = useChange('card.print');
  const write = async () => {
    setError(null);
    setPath(null);
    try {
      const chosen = await call('shell.choosePdf', { suggestedName: 'Calibration cards.pdf' });
      if (chosen !== null) setPath((await print.runOrThrow({ token: chosen.token, paper })).path);
    } catch (thrown) {
      setError(thrown);
    }
  };
  const { title, steps } = cardSheet();
  return (
    <Panel title={title} onClose={onClose}>
      <p>
        A printed card beside the crack gives the photo its scale: one press finds it, sets the face straight and takes
        out what the lens bends.
      </p>
      <Choice label="Paper" options={paperOptions} value={paper} onChoose={setPaper} />
      <div>
        <Button look="primary" onPress={() => void write()} disabled={print.isRunning}>
          {print.isRunning ? 'Writing it ...' : 'Write the sheet as PDF'}
        </Button>
      </div>
      {path !== null && (
        <p role="status">
          Written to <span className={styles.path}>{path}</span>{' '}
          <Button look="link" onPress={() => void call('shell.showFile', { path }).catch(setError)}>
            Open it
          </Button>
        </p>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      <dl className={styles.steps}>
        {steps.map(({ name, words }) => (
          <div key={name} className={styles.step}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </Panel>
  );
}
