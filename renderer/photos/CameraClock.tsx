import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './CameraClock.module.css';
import { offsetFromClocks } from './clock-offset.ts';

interface CameraClockProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
}

/** What the camera's clock showed against what it was: one correction for all its photos of this visit. */
export function CameraClock({ record, shot }: CameraClockProps) {
  const [isOpen, setOpen] = useState(false);
  const [shows, setShows] = useState('');
  const [is, setIs] = useState('');
  const setClock = useChange('camera.setClock');
  if (shot.camera === null && shot.takenLocal === null) return null;
  const others = record.shots.filter(({ camera, binned }) => camera === shot.camera && !binned).length;
  if (!isOpen) {
    return (
      <Button look="link" onPress={() => setOpen(true)}>
        The camera’s clock was wrong
      </Button>
    );
  }
  const offsetMs = offsetFromClocks(shows, is);
  return (
    <section className={styles.clock} aria-label="The camera’s clock">
      <p className="soft small">
        Corrects all {others} photos of {shot.camera ?? 'this camera'} in this visit. The files stay as they are.
      </p>
      <div className={styles.pair}>
        <TextField label="The camera shows" value={shows} onChange={setShows} placeholder="2026-05-11 10:42" />
        <TextField label="It is" value={is} onChange={setIs} placeholder="2026-05-11 09:40" />
      </div>
      <div className={styles.pair}>
        <Button
          disabled={offsetMs === null || setClock.isRunning}
          onPress={() => {
            if (offsetMs === null) return;
            setClock.run({ visitId: record.visit.id, camera: shot.camera, offsetMs }, () => setOpen(false));
          }}
        >
          Correct them
        </Button>
        <Button look="link" onPress={() => setOpen(false)}>
          Leave it
        </Button>
      </div>
      {setClock.error !== null && <ErrorNote {...wordsOf(setClock.error)} />}
    </section>
  );
}
