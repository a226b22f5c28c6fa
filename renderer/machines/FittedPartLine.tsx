import { useState } from 'react';
import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import type { Layout } from '../../shared-lib/model/layout.ts';
import type { FittedPart } from '../../shared-lib/model/machine.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { dateWords, hoursWords } from '../ui/words.ts';
import { FittedPartForm } from './FittedPartForm.tsx';
import { HoursField } from './HoursField.tsx';
import styles from './MachinePlace.module.css';
import { hoursText, hoursWritten, type PartDraft, partKinds } from './part-draft.ts';
import { StayChoice } from './StayChoice.tsx';

interface FittedPartLineProps {
  readonly part: FittedPart;
  readonly layout: Layout;
  /** Newest first. */
  readonly visits: readonly MachineVisit[];
}

type Way = 'coming out' | 'changing' | null;

/** A part on the machine, or one that came out again. */
export function FittedPartLine({ part, layout, visits }: FittedPartLineProps) {
  const [way, setWay] = useState<Way>(null);
  const [draft, setDraft] = useState<PartDraft>(() => draftOf(part));
  const change = useChange('part.change');
  const strike = useChange('part.strike');
  const isIn = part.removedVisitId === null && part.removedHours === null;
  const spoken = speakLocation(part.path, layout, { long: true });
  const when = (visitId: string | null, hours: number | null) => {
    const date = visits.find(({ visit }) => visit.id === visitId)?.visit.date;
    const words = [
      ...(date === undefined ? [] : [dateWords(date)]),
      ...(hours === null ? [] : [`at ${hoursWords(hours)}`]),
    ];
    return words.length === 0 ? 'before what is on record' : words.join(' ');
  };
  const kind = partKinds.find(({ value }) => value === part.kind)?.words ?? '';
  return (
    <li className={styles.part}>
      <p>
        <b>{spoken}</b>, {kind.toLowerCase()}
      </p>
      <p className="soft">
        {`Fitted ${when(part.fittedVisitId, part.fittedHours)}.`}
        {!isIn && ` Came out ${when(part.removedVisitId, part.removedHours)}.`}
      </p>
      {way === null && (
        <div className={styles.wrapped}>
          {isIn && visits.length > 0 && (
            <Button look="link" label={`It came out: ${spoken}`} onPress={() => setWay('coming out')}>
              It came out
            </Button>
          )}
          {!isIn && (
            <Button
              look="link"
              label={`It is still in: ${spoken}`}
              onPress={() => change.run({ id: part.id, removedVisitId: null, removedHours: null })}
            >
              It is still in
            </Button>
          )}
          <Button
            look="link"
            label={`Change: ${spoken}`}
            onPress={() => {
              setDraft(draftOf(part));
              setWay('changing');
            }}
          >
            Change
          </Button>
          <Button
            look="link"
            label={`It was never fitted: ${spoken}`}
            disabled={strike.isRunning}
            onPress={() => strike.run({ id: part.id })}
          >
            It was never fitted
          </Button>
        </div>
      )}
      {way === 'coming out' && <ComingOut part={part} visits={visits} onDone={() => setWay(null)} />}
      {way === 'changing' && (
        <FittedPartForm
          layout={layout}
          visits={visits}
          draft={draft}
          onChange={setDraft}
          action="Put it right"
          isRunning={change.isRunning}
          error={change.error}
          onWrite={(written) => change.run({ id: part.id, ...written }, () => setWay(null))}
          onLeave={() => {
            change.forgetError();
            setWay(null);
          }}
        />
      )}
      {way === null && change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
      {strike.error !== null && <ErrorNote {...wordsOf(strike.error)} />}
    </li>
  );
}

const draftOf = ({ path, kind, fittedVisitId, fittedHours }: FittedPart): PartDraft => ({
  path,
  kind,
  visitId: fittedVisitId,
  hours: fittedHours === null ? '' : String(fittedHours),
});

interface ComingOutProps {
  readonly part: FittedPart;
  readonly visits: readonly MachineVisit[];
  readonly onDone: () => void;
}

function ComingOut({ part, visits, onDone }: ComingOutProps) {
  const remove = useChange('part.remove');
  const [visitId, setVisitId] = useState<string | null>(visits[0]?.visit.id ?? null);
  const [typed, setTyped] = useState<string | null>(null);
  const text = hoursText(typed, visits, visitId);
  const hours = hoursWritten(text);
  return (
    <section className={styles.form} aria-label="When it came out">
      <StayChoice
        label="Came out"
        visits={visits}
        visitId={visitId}
        onChoose={(chosen) => {
          setVisitId(chosen);
          setTyped(null);
        }}
      />
      <HoursField label="At true hours" value={text} onChange={setTyped} />
      {remove.error !== null && <ErrorNote {...wordsOf(remove.error)} />}
      <div className={styles.wrapped}>
        <Button
          disabled={visitId === null || hours === undefined || remove.isRunning}
          onPress={() => {
            if (visitId !== null && hours !== undefined) remove.run({ id: part.id, visitId, hours }, onDone);
          }}
        >
          Write it down as out
        </Button>
        <Button look="link" onPress={onDone}>
          Leave it
        </Button>
      </div>
    </section>
  );
}
