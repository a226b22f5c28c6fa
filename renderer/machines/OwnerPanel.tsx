import { useState } from 'react';
import type { Owner } from '../../shared-lib/model/machine.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { TextField } from '../ui/TextField.tsx';
import { today } from '../ui/words.ts';
import { emptyOwner, OwnerForm, ownerInput } from './OwnerForm.tsx';
import { isDate } from './visit-draft.ts';

interface OwnerPanelProps {
  readonly machineId: string;
  readonly owner: Owner | null;
  readonly onClose: () => void;
}

/** Who owns it: particulars that were wrong are put right, a sale is a new owner from a day on. */
export function OwnerPanel({ machineId, owner, onClose }: OwnerPanelProps) {
  const [isSold, setIsSold] = useState(owner === null);
  return (
    <Panel title="The owner" onClose={onClose}>
      {owner !== null && !isSold && <PresentOwner owner={owner} onSold={() => setIsSold(true)} />}
      {(owner === null || isSold) && (
        <NewOwner machineId={machineId} isFirst={owner === null} onDone={() => setIsSold(false)} />
      )}
    </Panel>
  );
}

function PresentOwner({ owner, onSold }: { readonly owner: Owner; readonly onSold: () => void }) {
  const change = useChange('owner.change');
  const { id, ...draft } = owner;
  return (
    <>
      <OwnerForm owner={draft} onChange={(next) => change.run({ ...next, id })} commits />
      {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
      <div>
        <Button look="link" onPress={onSold}>
          It has a new owner
        </Button>
      </div>
    </>
  );
}

interface NewOwnerProps {
  readonly machineId: string;
  readonly isFirst: boolean;
  readonly onDone: () => void;
}

function NewOwner({ machineId, isFirst, onDone }: NewOwnerProps) {
  const [draft, setDraft] = useState(emptyOwner);
  const [from, setFrom] = useState(isFirst ? '' : today());
  const setOwner = useChange('machine.setOwner');
  const owner = ownerInput(draft);
  const isDateFine = from === '' || isDate(from);
  return (
    <>
      {!isFirst && <p className="soft">The owner before stays on the visits of that time.</p>}
      <OwnerForm owner={draft} onChange={setDraft} />
      <TextField
        label="Owner since"
        hint="Year, month, day; may stay empty."
        value={from}
        onChange={setFrom}
        maxLength={10}
        error={
          isDateFine
            ? undefined
            : { happened: 'Not a date, such as 2026-06-08.', kept: 'What you typed still stands here.' }
        }
      />
      {setOwner.error !== null && <ErrorNote {...wordsOf(setOwner.error)} />}
      <Button
        look="primary"
        disabled={owner === undefined || !isDateFine || setOwner.isRunning}
        onPress={() => {
          if (owner !== undefined) setOwner.run({ id: machineId, owner, ...(from === '' ? {} : { from }) }, onDone);
        }}
      >
        Write the owner down
      </Button>
    </>
  );
}
