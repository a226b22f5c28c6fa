import { useState } from 'react';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { wordsFor } from '../api/client.ts';
import { isDate } from '../machines/visit-draft.ts';
import { TextField } from '../ui/TextField.tsx';
import styles from './FindingCard.module.css';
import { useFindingChange } from './use-finding-change.ts';

type Field = 'noticedOn' | 'absentOn';

/** Since when it is there, and when it was not yet: a cause comes before its effect. */
export function WhenFields({ finding }: { readonly finding: Finding }) {
  const { edit, error } = useFindingChange(finding.id);
  const [wrong, setWrong] = useState<{ readonly field: Field; readonly typed: string } | null>(null);
  const commit = (field: Field) => (typed: string) => {
    const day = typed.trim();
    const isDay = day === '' || isDate(day);
    setWrong(isDay ? null : { field, typed: day });
    if (isDay) edit({ [field]: day === '' ? null : day });
  };
  const errorAt = (field: Field) =>
    wrong?.field === field
      ? { happened: `\u201C${wrong.typed}\u201D is not a date, such as 2026-06-08.`, kept: 'The day stays as it was.' }
      : wordsFor(field, error);
  return (
    <div className={styles.pair}>
      <TextField
        label="First noticed on"
        placeholder="2026-06-08"
        value={finding.noticedOn ?? ''}
        onCommit={commit('noticedOn')}
        maxLength={10}
        error={errorAt('noticedOn')}
        hint="As the owner says."
      />
      <TextField
        label="Not there yet on"
        placeholder="2026-06-08"
        value={finding.absentOn ?? ''}
        onCommit={commit('absentOn')}
        maxLength={10}
        error={errorAt('absentOn')}
        hint="Seen sound, or new then."
      />
    </div>
  );
}
