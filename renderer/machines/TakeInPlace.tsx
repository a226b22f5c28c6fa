import { useState } from 'react';
import type { MachinePage } from '../../shared-lib/contract/machines.ts';
import type { MachinePlate } from '../../shared-lib/model/machine.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer, useChange, useKeepAnswer } from '../api/queries.ts';
import { useCommand } from '../app/command-keys.ts';
import { keyOf } from '../app/commands.ts';
import { go, replacePlace } from '../app/place.ts';
import { WhoChip } from '../app/WhoChip.tsx';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Breadcrumb, Header, HeaderEnd, HeaderMiddle } from '../ui/Header.tsx';
import { Plate } from '../ui/Plate.tsx';
import laidOut from '../ui/panes.module.css';
import { TextField } from '../ui/TextField.tsx';
import { today } from '../ui/words.ts';
import { kindWords, machineName } from './floor-words.ts';
import { LayoutForm } from './LayoutForm.tsx';
import { plateFields } from './machine-plate.ts';
import { emptyOwner, OwnerForm, ownerInput } from './OwnerForm.tsx';
import { readHours } from './read-hours.ts';
import styles from './TakeInPlace.module.css';
import { usualLayout } from './usual-layout.ts';
import { VisitForm } from './VisitForm.tsx';
import { emptyVisitDraft, isDate, visitInput } from './visit-draft.ts';

const emptyPlate = { kind: '', serial: '', year: '', engineSerial: '', bay: '' };

/** A machine that has not been here before. Only its kind is needed; its visit is opened at once. */
export function TakeInPlace() {
  const [plate, setPlate] = useState(emptyPlate);
  const [owner, setOwner] = useState(emptyOwner);
  const [layout, setLayout] = useState(usualLayout);
  const [visit, setVisit] = useState(() => emptyVisitDraft(today()));
  const add = useChange('machine.add');
  const open = useChange('visit.open');
  const keepAnswer = useKeepAnswer();
  /** Written already, when only the visit was refused: it is not taken in twice. */
  const [added, setAdded] = useState<MachinePage | null>(null);

  const isReady = plate.kind.trim() !== '' && isDate(visit.date) && !add.isRunning && !open.isRunning;
  const refused = add.error ?? open.error;
  const hours = readHours(visit.hours);

  const finish = async () => {
    if (!isReady) return;
    try {
      const ownerNow = ownerInput(owner);
      const page =
        added ??
        (await add.runOrThrow({
          plate: plateInput(plate),
          layout,
          ...(ownerNow === undefined ? {} : { owner: ownerNow }),
        }));
      setAdded(page);
      const record = await open.runOrThrow(visitInput(visit, page.machine.id, page.meters.at(-1)?.id ?? null));
      keepAnswer('visit.get', { id: record.visit.id }, record);
      replacePlace({ name: 'visit', visitId: record.visit.id, page: 'page' });
    } catch {
      // Each change keeps its own refusal, shown above the button.
    }
  };
  useCommand('takeIn.finish', () => void finish());

  const set = (key: keyof typeof emptyPlate) => (text: string) => setPlate((now) => ({ ...now, [key]: text }));
  return (
    <>
      <Header>
        <Breadcrumb trail={[{ words: 'Floor', onGo: () => go({ name: 'floor' }) }]} here="Take in a machine" />
        <HeaderMiddle />
        <HeaderEnd>
          <WhoChip />
        </HeaderEnd>
      </Header>
      <div className={classNames(laidOut.panes, styles.panes)}>
        <div className={styles.form}>
          <div className={styles.sheet}>
            <section className={styles.section} aria-label="The plate">
              <h2>The plate</h2>
              <div className={styles.pair}>
                <TextField
                  className={styles.kind}
                  label="What kind of machine is it?"
                  placeholder="backhoe loader, row-crop tractor, irrigation engine ..."
                  hint="The one thing that is needed. Everything else may follow later."
                  value={plate.kind}
                  onChange={set('kind')}
                  autoFocus
                  maxLength={120}
                />
                <TextField label="Serial" value={plate.serial} onChange={set('serial')} maxLength={80} />
                <TextField label="Year" value={plate.year} onChange={set('year')} maxLength={20} />
                <TextField
                  label="Engine's serial"
                  value={plate.engineSerial}
                  onChange={set('engineSerial')}
                  maxLength={80}
                />
                <TextField
                  label="Stands in"
                  placeholder="bay 2, yard"
                  value={plate.bay}
                  onChange={set('bay')}
                  maxLength={60}
                />
              </div>
              <HereAlready serial={plate.serial} />
            </section>
            <section className={styles.section} aria-label="Who brings it">
              <h2>Who brings it</h2>
              <OwnerForm owner={owner} onChange={setOwner} />
            </section>
            <section className={styles.section} aria-label="What is said">
              <h2>What is said</h2>
              <VisitForm draft={visit} onChange={setVisit} />
            </section>
            <section className={styles.section} aria-label="The engine, and what it has">
              <h2>The engine, and what it has</h2>
              <LayoutForm layout={layout} onChange={setLayout} />
            </section>
          </div>
        </div>
        <aside className={classNames(laidOut.side, styles.side)} aria-label="The plate as it will stand">
          <Plate
            size="large"
            blank={plate.kind.trim() === ''}
            title={kindWords(plate.kind.trim()) || 'Machine'}
            fields={plateFields({
              plate: { ...plate, kind: plate.kind },
              layout,
              ownerName: owner.name,
              ownerPlace: owner.place ?? '',
              hours: hours.kind === 'hours' ? hours.hours : null,
              isEstimate: visit.isEstimate,
            })}
          />
          <div className={styles.finish}>
            {refused !== null && <ErrorNote {...wordsOf(refused)} />}
            {plate.kind.trim() === '' && (
              <p className="soft">Say what kind of machine it is, and it can be taken in.</p>
            )}
            <Button
              look="primary"
              wide
              keyCap={keyOf('takeIn.finish')}
              disabled={!isReady}
              onPress={() => void finish()}
            >
              Take it in, open the visit
            </Button>
          </div>
        </aside>
      </div>
    </>
  );
}

function plateInput(plate: typeof emptyPlate): MachinePlate {
  const { kind, serial, ...optional } = plate;
  const filled = Object.entries(optional).filter(([, text]) => text.trim() !== '');
  return { kind: kind.trim(), serial: serial.trim(), ...Object.fromEntries(filled) };
}

const fewestSerialLetters = 3;

/** The serial is one that has been here: it is not taken in twice. */
function HereAlready({ serial }: { readonly serial: string }) {
  const find = serial.trim();
  const isAsked = find.length >= fewestSerialLetters;
  const found = useAnswer('machine.floor', { find }, { when: isAsked });
  const same = isAsked
    ? found.data?.find(({ machine }) => machine.serial.toLowerCase() === find.toLowerCase())
    : undefined;
  if (same === undefined) return null;
  return (
    <ErrorNote happened={`${machineName(same.machine)} has been here before.`} kept="Its history is with it.">
      <Button onPress={() => go({ name: 'machine', machineId: same.machine.id })}>Go to it</Button>
    </ErrorNote>
  );
}
