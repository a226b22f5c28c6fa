import type { Owner } from '../../shared-lib/model/machine.ts';
import { Choice, type ChoiceOption } from '../ui/Choice.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './VisitForm.module.css';

export type OwnerDraft = Omit<Owner, 'id'>;

export const emptyOwner: OwnerDraft = { name: '', kind: 'person', capacity: 'owner' };

const kinds: readonly ChoiceOption<Owner['kind']>[] = [
  { value: 'person', words: 'a person' },
  { value: 'company', words: 'a company' },
];

interface OwnerFormProps {
  readonly owner: OwnerDraft;
  /** Every keystroke, or only what was left: as the fields around it are kept. */
  readonly onChange: (owner: OwnerDraft) => void;
  readonly commits?: boolean | undefined;
}

/** Who owns it, and who speaks for it. */
export function OwnerForm({ owner, onChange, commits = false }: OwnerFormProps) {
  const field = (key: 'name' | 'capacity' | 'place' | 'phone' | 'note') => {
    const set = (text: string) => onChange({ ...owner, [key]: text });
    return { value: owner[key] ?? '', ...(commits ? { onCommit: set } : { onChange: set }) };
  };
  return (
    <div className={styles.form}>
      <div className={styles.pair}>
        <TextField label="Owner" maxLength={200} {...field('name')} />
        <Choice label="Is" options={kinds} value={owner.kind} onChoose={(kind) => onChange({ ...owner, kind })} />
        <TextField label="Place" maxLength={200} {...field('place')} />
        <TextField label="Telephone" maxLength={60} {...field('phone')} />
      </div>
      <TextField
        label="Who speaks for it"
        hint="Owner, foreman, operator: as it should stand on the report."
        maxLength={120}
        {...field('capacity')}
      />
    </div>
  );
}

/** An owner to be written down, or nothing while there is no name. */
export function ownerInput(draft: OwnerDraft): OwnerDraft | undefined {
  const name = draft.name.trim();
  if (name === '') return undefined;
  const { place, phone, note, ...rest } = draft;
  const optional = Object.entries({ place, phone, note }).filter(
    ([, text]) => text !== undefined && text.trim() !== '',
  );
  return { ...rest, name, capacity: rest.capacity.trim(), ...Object.fromEntries(optional) };
}
