import { wordsOf } from '../api/client.ts';
import { useCommand } from '../app/command-keys.ts';
import { keyOf } from '../app/commands.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { ImportProgressList } from './ImportProgressList.tsx';
import styles from './TakePhotosLine.module.css';
import { useDroppedFiles } from './use-dropped-files.ts';
import { useTakePhotos } from './use-take-photos.ts';

/** The line of the page where photos come in: by dialog, drop or paste; and what became of those offered. */
export function TakePhotosLine({ visitId }: { readonly visitId: string }) {
  const photos = useTakePhotos(visitId);
  const isOver = useDroppedFiles(photos.drop, photos.takePasted);
  useCommand('photos.take', photos.choose);
  return (
    <section className={styles.line} aria-label="Take in photos" data-over={isOver || undefined}>
      <div className={styles.row}>
        <Button onPress={photos.choose} keyCap={keyOf('photos.take')}>
          Take in photos
        </Button>
        <span className="soft">{isOver ? 'Let go: they are taken in here.' : 'or drop them here, or paste one'}</span>
      </div>
      {photos.error !== null && photos.error !== undefined && <ErrorNote {...wordsOf(photos.error)} />}
      <ImportProgressList visitId={visitId} />
    </section>
  );
}
