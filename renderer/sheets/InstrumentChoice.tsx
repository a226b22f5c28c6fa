import { useState } from 'react';
import type { Instrument } from '../../shared-lib/model/shop.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './NotTaken.module.css';

interface InstrumentChoiceProps {
  readonly visitId: string;
  readonly instruments: readonly Instrument[];
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}

/** What it was read on: its smallest step is what the reading can be off by, where nothing better was typed. */
export function InstrumentChoice({ visitId, instruments, chosen, onChoose }: InstrumentChoiceProps) {
  const add = useChange('instrument.add');
  const [name, setName] = useState('');
  const [resolution, setResolution] = useState('');
  const isWhole = name.trim() !== '' && resolution.trim() !== '';
  return (
    <div className={styles.reasons}>
      {instruments.length > 0 && (
        <Choice
          label="Read on"
          value={chosen}
          onChoose={onChoose}
          options={instruments.map((each) => ({
            value: each.id,
            words: each.name,
            note: `steps of ${each.resolution}`,
          }))}
        />
      )}
      <div className={styles.own}>
        <TextField label="Another instrument" value={name} onChange={setName} maxLength={120} />
        <TextField
          label="Smallest step"
          value={resolution}
          onChange={setResolution}
          placeholder="0.01 mm"
          maxLength={60}
        />
        <Button
          disabled={!isWhole || add.isRunning}
          onPress={() =>
            add.run({ visitId, name: name.trim(), resolution: resolution.trim() }, ({ id }) => {
              setName('');
              setResolution('');
              onChoose(id);
            })
          }
        >
          Read on this
        </Button>
      </div>
      {add.error !== null && <ErrorNote {...wordsOf(add.error)} />}
    </div>
  );
}
