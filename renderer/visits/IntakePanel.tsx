import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { deedWords, sayEarlierWork } from '../../shared-lib/intake/words.ts';
import { type EarlierWork, earlierDeeds, type Intake } from '../../shared-lib/model/intake.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import selecting from '../ui/select.module.css';
import { TextField } from '../ui/TextField.tsx';
import { ArrivalPhotos } from './ArrivalPhotos.tsx';
import { ConditionFields } from './ConditionFields.tsx';
import { FluidFields } from './FluidFields.tsx';
import styles from './IntakePanel.module.css';

interface IntakePanelProps {
  readonly record: VisitRecord;
  readonly onClose: () => void;
}

const nothing: Intake = { earlierWork: [], fluids: [], photos: [] };

/** The machine as it was received: what others did to it, its fluids, the conditions, and the walk round it. */
export function IntakePanel({ record, onClose }: IntakePanelProps) {
  const { visit, intake = nothing } = record;
  return (
    <Panel title="As it came in" onClose={onClose} wide>
      <section aria-label="Done before, and by whom" className={styles.section}>
        <h3>Done before, and by whom</h3>
        <DoneBefore visitId={visit.id} works={intake.earlierWork} />
      </section>
      <section aria-label="Fluids as received" className={styles.section}>
        <h3>Fluids as received</h3>
        <FluidFields visitId={visit.id} fluids={intake.fluids} />
      </section>
      <section aria-label="Conditions" className={styles.section}>
        <h3>Conditions</h3>
        <ConditionFields visit={visit} />
      </section>
      <section aria-label="The walk round it" className={styles.section}>
        <h3>The walk round it</h3>
        <ArrivalPhotos record={record} photos={intake.photos} />
      </section>
    </Panel>
  );
}

const emptyWork = { what: '', did: 'changed' as EarlierWork['did'], byWhom: '', whenDone: '' };

function DoneBefore({ visitId, works }: { readonly visitId: string; readonly works: readonly EarlierWork[] }) {
  const add = useChange('earlierWork.add');
  const remove = useChange('earlierWork.remove');
  const [draft, setDraft] = useState(emptyWork);
  const set = (change: Partial<typeof emptyWork>) => setDraft({ ...draft, ...change });
  const isEmpty = draft.what.trim() === '';
  const error = add.error ?? remove.error;
  return (
    <>
      {works.length > 0 && (
        <ul>
          {works.map((work) => (
            <li key={work.id} className={styles.line}>
              <span>{sayEarlierWork(work)}</span>
              <Button look="link" label={`Take off: ${work.what}`} onPress={() => remove.run({ id: work.id })}>
                Take off
              </Button>
            </li>
          ))}
        </ul>
      )}
      <form
        className={styles.fields}
        onSubmit={(event) => {
          event.preventDefault();
          if (!isEmpty) add.run({ visitId, ...draft, what: draft.what.trim() }, () => setDraft(emptyWork));
        }}
      >
        <TextField
          label="Part"
          placeholder="upper hose, thermostat"
          value={draft.what}
          onChange={(what) => set({ what })}
          maxLength={400}
        />
        <label className={selecting.field}>
          <span>Was</span>
          <select
            className={selecting.select}
            value={draft.did}
            onChange={({ target }) => {
              const did = earlierDeeds.find((each) => each === target.value);
              if (did !== undefined) set({ did });
            }}
          >
            {earlierDeeds.map((deed) => (
              <option key={deed} value={deed}>
                {deedWords[deed]}
              </option>
            ))}
          </select>
        </label>
        <TextField
          label="By whom"
          placeholder="the owner, another shop"
          value={draft.byWhom}
          onChange={(byWhom) => set({ byWhom })}
          maxLength={200}
        />
        <TextField
          label="When"
          placeholder="last spring, at 5200 h"
          value={draft.whenDone}
          onChange={(whenDone) => set({ whenDone })}
          maxLength={200}
        />
        <Button type="submit" disabled={isEmpty || add.isRunning}>
          Write it down
        </Button>
      </form>
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </>
  );
}
