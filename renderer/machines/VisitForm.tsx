import type { ReactNode } from 'react';
import { NumberField } from '../ui/NumberField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import { HoursField } from './HoursField.tsx';
import { readHours } from './read-hours.ts';
import styles from './VisitForm.module.css';
import { isDate, type VisitDraft } from './visit-draft.ts';

interface VisitFormProps {
  readonly draft: VisitDraft;
  readonly onChange: (draft: VisitDraft) => void;
  readonly hoursHint?: string | undefined;
  /** Stands right under the hours: what is asked when they fall. */
  readonly underHours?: ReactNode;
}

/** What the owner says, the hours as seen, and how the machine is used. */
export function VisitForm({ draft, onChange, hoursHint, underHours }: VisitFormProps) {
  const { use } = draft;
  const set = (change: Partial<VisitDraft>) => onChange({ ...draft, ...change });
  const setUse = (change: Partial<VisitDraft['use']>) => set({ use: { ...use, ...change } });
  const commitExposure = (typed: string) => {
    const read = readHours(typed);
    if (read.kind === 'hours' && read.hours > 0 && read.hours <= 100_000) setUse({ exposureHours: read.hours });
  };
  return (
    <div className={styles.form}>
      <TextField
        label="What the owner says"
        lines="many"
        value={draft.complaint}
        onChange={(complaint) => set({ complaint })}
        hint="In the owner's own words."
        maxLength={4000}
      />
      <div className={styles.pair}>
        <div>
          <HoursField value={draft.hours} onChange={(hours) => set({ hours })} hint={hoursHint} />
          <Toggle label="only an estimate" on={draft.isEstimate} onChange={(isEstimate) => set({ isEstimate })} />
        </div>
        <TextField
          label="Came in on"
          value={draft.date}
          onChange={(date) => set({ date })}
          hint="Year, month, day."
          maxLength={10}
          error={
            isDate(draft.date)
              ? undefined
              : { happened: 'Not a date, such as 2026-06-08.', kept: 'What you typed still stands here.' }
          }
        />
      </div>
      {underHours}
      <fieldset>
        <legend className={styles.legend}>It is used</legend>
        <div className={styles.checks}>
          <Toggle label="on the road" on={use.road} onChange={(road) => setUse({ road })} />
          <Toggle label="on slopes" on={use.slope} onChange={(slope) => setUse({ slope })} />
          <Toggle label="with people near" on={use.peopleNear} onChange={(peopleNear) => setUse({ peopleNear })} />
        </div>
      </fieldset>
      <div className={styles.pair}>
        <NumberField
          label="It will run, until looked at again"
          value={String(use.exposureHours)}
          onCommit={commitExposure}
          unit="h"
          hint="How likely a harm is, is judged over these hours."
          maxLength={8}
        />
      </div>
    </div>
  );
}
