import { useSyncExternalStore } from 'react';
import styles from './PhotoStage.module.css';
import type { StageController } from './stage-controller.ts';
import { stageWords } from './words.ts';

interface StageStatusProps {
  readonly controller: StageController;
  readonly busyText: string | undefined;
}

/** What the stage is doing, in a dark band at its edge; and what was just done, for a screen reader. */
export function StageStatus({ controller, busyText }: StageStatusProps) {
  const words = useSyncExternalStore(controller.subscribe, () => wordsOf(controller));
  const spoken = useSyncExternalStore(controller.subscribe, () => controller.snapshot.spoken);
  const shown = busyText ?? words;
  return (
    <>
      {shown !== '' && (
        <p className={styles.status} role="status">
          {shown}
        </p>
      )}
      <p className={styles.unseen} aria-live="polite">
        {spoken}
      </p>
    </>
  );
}

function wordsOf({ pieces, snapshot: { view, size } }: StageController): string {
  const { sharpness, failed, isLoading } = pieces?.status(view, size) ?? {
    sharpness: 'none',
    failed: null,
    isLoading: true,
  };
  if (failed === 'photo' && sharpness === 'none') return stageWords.photoFailed;
  if (failed === 'full' && sharpness === 'screen') return stageWords.fullFailed;
  if (sharpness === 'none') return stageWords.loading;
  return isLoading && sharpness === 'screen' ? stageWords.sharpening : '';
}
