import { useState } from 'react';
import type { Meter } from '../../shared-lib/model/machine.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { today } from '../ui/words.ts';
import { HoursField } from './HoursField.tsx';
import styles from './MachinePlace.module.css';
import { meterInNow } from './meter-now.ts';
import { readHours } from './read-hours.ts';

interface NewMeterProps {
  readonly machineId: string;
  readonly meters: readonly Meter[];
  /** The most that was read on this machine. */
  readonly trueHours: number | null;
  readonly onDone: (meter: Meter) => void;
}

/** A replaced meter: what the machine had run, and what the new one showed, make its readings true hours. */
export function NewMeter({ machineId, meters, trueHours, onDone }: NewMeterProps) {
  const [had, setHad] = useState(trueHours === null ? '' : String(trueHours));
  const [shown, setShown] = useState('0');
  const add = useChange('meter.add');
  const end = useChange('meter.change');
  const hadRead = readHours(had);
  const shownRead = readHours(shown);
  const isReady = hadRead.kind === 'hours' && shownRead.kind === 'hours' && !add.isRunning;
  const refused = add.error ?? end.error;

  const write = async () => {
    if (hadRead.kind !== 'hours' || shownRead.kind !== 'hours') return;
    const before = meterInNow(meters);
    try {
      const meter = await add.runOrThrow({
        machineId,
        name: `hour meter ${meters.length + 1}`,
        offsetHours: hadRead.hours - shownRead.hours,
        from: today(),
        until: null,
        dead: false,
      });
      if (before !== undefined) await end.runOrThrow({ id: before.id, until: today() });
      onDone(meter);
    } catch {
      // Each change keeps its own refusal, shown under the fields.
    }
  };

  return (
    <div className={styles.form}>
      <div className={styles.pair}>
        <HoursField label="The machine had run" value={had} onChange={setHad} hint="When the old meter came off." />
        <HoursField label="The new one showed" value={shown} onChange={setShown} hint="When it was fitted." />
      </div>
      {refused !== null && <ErrorNote {...wordsOf(refused)} />}
      <div>
        <Button disabled={!isReady} onPress={() => void write()}>
          Write the new meter down
        </Button>
      </div>
    </div>
  );
}
