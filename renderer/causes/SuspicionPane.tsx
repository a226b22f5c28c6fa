import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { defectsForComponent } from '../../shared-lib/defects/defects-for-component.ts';
import { defectOf } from '../../shared-lib/defects/index.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { historyOf } from '../../shared-lib/suspicions/history.ts';
import type { SuspicionColumn } from '../../shared-lib/suspicions/table.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { PlacePicker } from '../findings/PlacePicker.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import selecting from '../ui/select.module.css';
import { TextField } from '../ui/TextField.tsx';
import styles from './CausesPage.module.css';
import { Moment } from './Moment.tsx';

interface SuspicionPaneProps {
  readonly record: VisitRecord;
  readonly column: SuspicionColumn;
  readonly onClose: () => void;
}

/** One suspicion: what is meant and where, what became of it so far, and how it ends. */
export function SuspicionPane({ record, column, onClose }: SuspicionPaneProps) {
  const { suspicion, state } = column;
  const { id, what, at, defect } = suspicion;
  const { layout } = record.layout;
  const change = useChange('suspicion.change');
  const [isPlacing, setPlacing] = useState(false);
  const { fitting, others } = defectsForComponent(at);
  return (
    <section className={styles.one} aria-label={`Suspicion: ${what}`}>
      <div className={styles.ruled}>
        <h2>One suspicion</h2>
        <Button look="link" onPress={onClose}>
          Lay it aside
        </Button>
      </div>
      <TextField
        label="What it could be"
        value={what}
        lines="many"
        maxLength={400}
        onCommit={(text) => text.trim() !== '' && change.run({ id, what: text.trim() })}
      />
      {isPlacing ? (
        <PlacePicker
          layout={layout}
          onPick={(path) => change.run({ id, at: path }, () => setPlacing(false))}
          onClose={() => setPlacing(false)}
        />
      ) : (
        <p className={styles.row}>
          <span>{at === null ? 'Where is not said' : speakComponent(at, layout)}</span>
          <Button look="link" onPress={() => setPlacing(true)}>
            {at === null ? 'Say where' : 'Change'}
          </Button>
        </p>
      )}
      <label className={selecting.field}>
        <span>What kind it would be</span>
        <select
          className={selecting.select}
          value={defect ?? ''}
          onChange={({ target }) => change.run({ id, defect: target.value === '' ? null : target.value })}
        >
          <option value="">not said</option>
          {[...fitting, ...others].map((each) => (
            <option key={each.id} value={each.id}>
              {each.name}
            </option>
          ))}
        </select>
      </label>
      <p className={styles.small}>
        {defect === null ? 'Said, it is known which test can show it and which cannot.' : defectOf(defect)?.misses}
      </p>
      <h3>What became of it</h3>
      <ol className={styles.history}>
        {historyOf(suspicion, record).map((line) => (
          <li key={line.id} data-turn={line.reverses || undefined}>
            <Moment className={styles.time} atMs={line.atMs} day={record.visit.date} />
            <span>{line.words}</span>
          </li>
        ))}
      </ol>
      <Ending record={record} id={id} state={state} />
      {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
    </section>
  );
}

interface EndingProps {
  readonly record: VisitRecord;
  readonly id: string;
  readonly state: SuspicionColumn['state'];
}

/** Given up with a reason, taken up again, or found: by a finding that stands as confirmed. */
function Ending({ record, id, state }: EndingProps) {
  const close = useChange('suspicion.close');
  const find = useChange('suspicion.find');
  const [because, setBecause] = useState('');
  const said = because.trim();
  const confirmed = record.standing.lines.filter((line) => line.state === 'confirmed');
  const error = close.error ?? find.error;
  const isOpen = state === 'open';
  return (
    <div className={styles.ending}>
      <TextField
        label={isOpen ? 'Given up, because' : 'Taken up again, because'}
        value={because}
        onChange={setBecause}
        placeholder={isOpen ? 'same rate with a new hose' : 'still loses coolant'}
        maxLength={400}
      />
      <div className={styles.row}>
        <Button
          disabled={close.isRunning || (isOpen && said === '')}
          onPress={() =>
            close.run(isOpen ? { id, because: said } : { id, because: null, again: said }, () => setBecause(''))
          }
        >
          {isOpen ? 'Give it up' : 'Take it up again'}
        </Button>
      </div>
      {isOpen && confirmed.length > 0 && (
        <>
          <h3>Or it was so: it is this finding</h3>
          <ul className={styles.found}>
            {confirmed.map(({ findingId, number, title }) => (
              <li key={findingId}>
                <span>
                  {number}, {title}
                </span>
                <Button
                  look="link"
                  label={`It is finding ${number}`}
                  disabled={find.isRunning}
                  onPress={() => find.run({ id, findingId })}
                >
                  This one
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </div>
  );
}
