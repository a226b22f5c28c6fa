import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Reading } from '../../shared-lib/model/reading.ts';
import type { Instrument } from '../../shared-lib/model/shop.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import { DialPhotos } from './DialPhotos.tsx';
import { InstrumentChoice } from './InstrumentChoice.tsx';
import { NotTaken } from './NotTaken.tsx';
import styles from './SheetFoot.module.css';
import type { SheetPatch } from './use-sheet-draft.ts';

interface SheetFootProps {
  readonly record: VisitRecord;
  readonly reading: Reading | undefined;
  readonly instruments: readonly Instrument[];
  readonly onSend: (patch: SheetPatch) => void;
}

type Part = 'not taken' | 'dial' | 'instrument' | 'remark';

/** What was asked for by its word must not open under the edge of the window. */
const intoSight = (part: HTMLElement | null) => part?.scrollIntoView({ block: 'nearest' });

/** What belongs to a reading besides its numbers, each behind its word. */
export function SheetFoot({ record, reading, instruments, onSend }: SheetFootProps) {
  const [open, setOpen] = useState<Part | null>(null);
  const remove = useChange('reading.remove');
  const toggle = (part: Part, words: string) => (
    <Button look="link" expanded={open === part} onPress={() => setOpen(open === part ? null : part)}>
      {words}
    </Button>
  );
  if (reading !== undefined && reading.notTakenBecause !== null) {
    return (
      <div className={styles.foot}>
        <Button onPress={() => onSend({ notTakenBecause: null })}>It was taken after all</Button>
      </div>
    );
  }
  const dials = reading?.shotIds?.length ?? 0;
  const instrument = instruments.find(({ id }) => id === reading?.instrumentId);
  return (
    <div className={styles.foot}>
      <p className={styles.words}>
        {toggle('not taken', 'Not taken, because')}
        {toggle('dial', dials === 0 ? 'Photo of the dial' : `Photo of the dial (${dials})`)}
        {toggle('instrument', instrument === undefined ? 'Which instrument' : `Instrument: ${instrument.name}`)}
        {toggle('remark', 'Remark')}
        {reading !== undefined && (
          <Button
            look="link"
            disabled={remove.isRunning}
            onPress={() =>
              remove.run({ id: reading.id }, () => go({ name: 'visit', visitId: record.visit.id, page: 'sheets' }))
            }
          >
            Take the reading off
          </Button>
        )}
      </p>
      {remove.error !== null && <ErrorNote {...wordsOf(remove.error)} />}
      <div ref={open === null ? undefined : intoSight} className={styles.part}>
        {open === 'not taken' && (
          <NotTaken
            onReason={(reason) => {
              onSend({ notTakenBecause: reason });
              setOpen(null);
            }}
          />
        )}
        {open === 'dial' && (
          <DialPhotos record={record} chosen={reading?.shotIds ?? []} onChoose={(shotIds) => onSend({ shotIds })} />
        )}
        {open === 'instrument' && (
          <InstrumentChoice
            visitId={record.visit.id}
            instruments={instruments}
            chosen={reading?.instrumentId ?? null}
            onChoose={(instrumentId) => onSend({ instrumentId })}
          />
        )}
        {open === 'remark' && (
          <TextField
            label="Remark"
            lines="many"
            value={reading?.remark ?? ''}
            maxLength={2000}
            onCommit={(remark) => onSend({ remark })}
          />
        )}
      </div>
    </div>
  );
}
