import { operationWords } from '../../shared-lib/wording/operations.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { useCommand } from './command-keys.ts';
import styles from './UndoLink.module.css';

/** 'Undo: ...', always in sight in a visit, and the keys for it. */
export function UndoLink({ visitId }: { readonly visitId: string }) {
  const state = useAnswer('undo.state', { visitId });
  const undo = useChange('undo.undo');
  const redo = useChange('undo.redo');
  const canUndo = state.data?.undo ?? null;
  const canRedo = state.data?.redo ?? null;
  const refused = undo.error ?? redo.error;

  const runUndo = () => {
    redo.forgetError();
    undo.run({ visitId });
  };
  const runRedo = () => {
    undo.forgetError();
    redo.run({ visitId });
  };
  useCommand('edit.undo', runUndo, canUndo !== null && !undo.isRunning);
  useCommand('edit.redo', runRedo, canRedo !== null && !redo.isRunning);

  return (
    <div className={styles.undo}>
      {canUndo !== null && (
        <Button look="link" onPress={runUndo} disabled={undo.isRunning} repeats className={styles.link}>
          {`Undo: ${operationWords(canUndo)}`}
        </Button>
      )}
      {canUndo === null && canRedo !== null && (
        <Button look="link" onPress={runRedo} disabled={redo.isRunning} repeats className={styles.link}>
          {`Redo: ${operationWords(canRedo)}`}
        </Button>
      )}
      {refused !== null && (
        <span className={styles.refused} role="alert">
          {wordsOf(refused).happened}
        </span>
      )}
    </div>
  );
}
