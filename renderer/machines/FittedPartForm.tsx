import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import type { Layout } from '../../shared-lib/model/layout.ts';
import type { FittedPart } from '../../shared-lib/model/machine.ts';
import { wordsOf } from '../api/client.ts';
import { PlaceField } from '../findings/PlaceField.tsx';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { HoursField } from './HoursField.tsx';
import styles from './MachinePlace.module.css';
import { hoursText, hoursWritten, type PartDraft, partKinds } from './part-draft.ts';
import { StayChoice } from './StayChoice.tsx';

type Written = Pick<FittedPart, 'path' | 'kind' | 'fittedVisitId' | 'fittedHours'>;

interface FittedPartFormProps {
  readonly layout: Layout;
  /** Newest first. */
  readonly visits: readonly MachineVisit[];
  readonly draft: PartDraft;
  readonly onChange: (draft: PartDraft) => void;
  readonly action: string;
  readonly isRunning: boolean;
  readonly error: unknown;
  readonly onWrite: (part: Written) => void;
  readonly onLeave: () => void;
}

/** Which part, what it is, and when it went in. */
export function FittedPartForm(props: FittedPartFormProps) {
  const { layout, visits, draft, onChange, action, isRunning, error, onWrite, onLeave } = props;
  const text = hoursText(draft.hours, visits, draft.visitId);
  const fittedHours = hoursWritten(text);
  const { path, kind } = draft;
  return (
    <section className={styles.form} aria-label={action}>
      <PlaceField label="Part" layout={layout} place={path} onPlace={(place) => onChange({ ...draft, path: place })} />
      <Choice
        label="It is"
        options={partKinds}
        value={kind}
        onChoose={(chosen) => onChange({ ...draft, kind: chosen })}
      />
      <StayChoice
        label="Fitted"
        visits={visits}
        visitId={draft.visitId}
        onChoose={(visitId) => onChange({ ...draft, visitId, hours: null })}
        notHereWords="Not in a visit here"
      />
      <HoursField
        label="At true hours"
        value={text}
        onChange={(hours) => onChange({ ...draft, hours })}
        hint={
          draft.visitId === null ? 'Left empty, it stands as fitted before everything that is on record.' : undefined
        }
      />
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      <div className={styles.wrapped}>
        <Button
          disabled={path === null || kind === null || fittedHours === undefined || isRunning}
          onPress={() => {
            if (path !== null && kind !== null && fittedHours !== undefined)
              onWrite({ path, kind, fittedVisitId: draft.visitId, fittedHours });
          }}
        >
          {action}
        </Button>
        <Button look="link" onPress={onLeave}>
          Leave it
        </Button>
      </div>
    </section>
  );
}
