import type { Machine } from '../../shared-lib/model/machine.ts';
import { wordsFor, wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { TextField } from '../ui/TextField.tsx';

interface PlatePanelProps {
  readonly machine: Machine;
  readonly onClose: () => void;
}

const fields = [
  { key: 'kind', label: 'Kind of machine', maxLength: 120 },
  { key: 'serial', label: 'Serial', maxLength: 80 },
  { key: 'year', label: 'Year', maxLength: 20 },
  { key: 'engineSerial', label: "Engine's serial", maxLength: 80 },
  { key: 'bay', label: 'Stands in', maxLength: 60 },
] as const;

/** The plate, field by field; each is kept on leaving it. */
export function PlatePanel({ machine, onClose }: PlatePanelProps) {
  const change = useChange('machine.change');
  const save = (plate: Parameters<typeof change.run>[0]['plate']) => change.run({ id: machine.id, plate });
  return (
    <Panel title="The plate" onClose={onClose}>
      {fields.map(({ key, label, maxLength }) => (
        <TextField
          key={key}
          label={label}
          maxLength={maxLength}
          value={machine[key] ?? ''}
          onCommit={(text) => save({ [key]: text.trim() })}
          error={wordsFor(`plate.${key}`, change.error)}
        />
      ))}
      <TextField
        label="Note"
        lines="many"
        maxLength={500}
        value={machine.note ?? ''}
        onCommit={(note) => save({ note: note.trim() })}
      />
      {change.error !== null && change.error.wire.field === undefined && <ErrorNote {...wordsOf(change.error)} />}
    </Panel>
  );
}
