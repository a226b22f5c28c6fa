import { useState } from 'react';
import type { MachinePage, MachineVisit } from '../../shared-lib/contract/machines.ts';
import type { Meter } from '../../shared-lib/model/machine.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import { dateWords, hoursWords, numberWords } from '../ui/words.ts';
import styles from './MachinePlace.module.css';
import { NewMeter } from './NewMeter.tsx';
import { highestHours } from './newest-first.ts';

interface MetersPanelProps {
  readonly page: MachinePage;
  readonly visits: readonly MachineVisit[];
  readonly onClose: () => void;
}

/** The hour meters in their time on the machine. */
export function MetersPanel({ page, visits, onClose }: MetersPanelProps) {
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Panel title="Hour meter" onClose={onClose}>
      <p className="soft">
        True hours are what a meter shows, and what the machine had run before that meter was fitted.
      </p>
      {page.meters.map((meter) => (
        <MeterLine key={meter.id} meter={meter} />
      ))}
      {isAdding ? (
        <NewMeter
          machineId={page.machine.id}
          meters={page.meters}
          trueHours={highestHours(visits)}
          onDone={() => setIsAdding(false)}
        />
      ) : (
        <div>
          <Button onPress={() => setIsAdding(true)}>The meter was changed</Button>
        </div>
      )}
    </Panel>
  );
}

function MeterLine({ meter }: { readonly meter: Meter }) {
  const change = useChange('meter.change');
  const time = [
    meter.from === null ? '' : `from ${dateWords(meter.from)}`,
    meter.until === null ? '' : `until ${dateWords(meter.until)}`,
  ].filter((words) => words !== '');
  return (
    <section className={styles.meter} aria-label={meter.name}>
      <TextField
        label="Called"
        value={meter.name}
        onCommit={(name) => change.run({ id: meter.id, name })}
        maxLength={60}
      />
      <p className="soft">
        {meter.offsetHours === 0
          ? 'Shows the true hours.'
          : `Add ${numberWords(meter.offsetHours)} to what it shows: at 0 the machine had run ${hoursWords(meter.offsetHours)}.`}{' '}
        {time.join(', ')}
      </p>
      <Toggle label="does not turn any more" on={meter.dead} onChange={(dead) => change.run({ id: meter.id, dead })} />
      {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
    </section>
  );
}
