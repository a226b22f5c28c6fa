import { useState } from 'react';
import type { Visit } from '../../shared-lib/model/visit.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './IntakePanel.module.css';

/** Asked of every visit; sheets take the altitude over. */
const usual: readonly { readonly key: string; readonly label: string; readonly placeholder: string }[] = [
  { key: 'altitude', label: 'Altitude', placeholder: '120 m' },
  { key: 'weather', label: 'Weather', placeholder: 'dry, 11 °C' },
  { key: 'ground', label: 'It stood on', placeholder: 'level concrete' },
];

/** The conditions of the visit, by name. An emptied one is taken away. */
export function ConditionFields({ visit }: { readonly visit: Visit }) {
  const change = useChange('visit.change');
  const [name, setName] = useState('');
  const [value, setValue] = useState('');
  const { id, conditions } = visit;
  const write = (key: string, text: string) => {
    const typed = text.trim();
    change.run({ id, conditions: { [key]: typed === '' ? null : typed } });
  };
  const known = new Set(usual.map(({ key }) => key));
  const others = Object.keys(conditions).filter((key) => !known.has(key));
  const wanted = name.trim().toLowerCase();
  const isBlank = wanted === '' || value.trim() === '';
  return (
    <>
      <div className={styles.fields}>
        {[
          ...usual,
          ...others.map((key) => ({ key, label: key.charAt(0).toUpperCase() + key.slice(1), placeholder: '' })),
        ].map(({ key, label, placeholder }) => (
          <TextField
            key={key}
            label={label}
            placeholder={placeholder}
            value={conditions[key] ?? ''}
            onCommit={(text) => write(key, text)}
            maxLength={400}
          />
        ))}
      </div>
      <form
        className={styles.fields}
        onSubmit={(event) => {
          event.preventDefault();
          if (isBlank) return;
          write(wanted, value);
          setName('');
          setValue('');
        }}
      >
        <TextField
          label="Another condition"
          placeholder="hydraulic oil, load, last run"
          value={name}
          onChange={setName}
          maxLength={60}
        />
        <TextField label="What it was" placeholder="45 °C" value={value} onChange={setValue} maxLength={400} />
        <Button type="submit" disabled={isBlank || change.isRunning}>
          Add it
        </Button>
      </form>
      {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
    </>
  );
}
