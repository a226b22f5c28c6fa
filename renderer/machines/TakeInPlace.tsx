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
import { kindWords, machineName } from './floor-words.ts';
import { LayoutForm } from './LayoutForm.tsx';
import { plateFields } from './machine-plate.ts';
import { OwnerForm, ownerInput } from './OwnerForm.tsx';
import { readHours } from './read-hours.ts';
import styles from './TakeInPlace.module.css';
import { type emptyPlate, useTakeInDraft } from './take-in-draft.ts';
import { VisitForm } from './VisitForm.tsx';
import { isDate, visitInput } from './visit-draft.ts';

/** A machine that has not been here before. Only its kind is needed; its visit is opened at once. */
export function TakeInPlace() {
  const { draft, set, isEmpty, forget } = useTakeInDraft();
  const { plate, owner, layout, visit, added } = draft;
  const add = useChange('machine.add');
  const open = useChange('visit.open');
  const keepAnswer = useKeepAnswer();

  const missing =
    plate.kind.trim() === ''
      ? 'Say what kind of machine it is, and it can be taken in.'
      : isDate(visit.date)
        ? null
        : 'Say on what day it came in, and it can be taken in.';
  const isReady = missing === null && !add.isRunning && !open.isRunning;
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
      set({ added: page });
      const record = await open.runOrThrow(visitInput(visit, page.machine.id, page.meters.at(-1)?.id ?? null));
      forget();
      keepAnswer('visit.get', { id: record.visit.id }, record);
      replacePlace({ name: 'visit', visitId: record.visit.id, page: 'page' });
    } catch {
      // Each change keeps its own refusal, shown above the button.
    }
  };
  useCommand('takeIn.finish', () => void finish());

  const setPlate = (key: keyof typeof emptyPlate) => (text: string) => set({ plate: { ...plate, [key]: text } });
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
                  onChange={setPlate('kind')}
                  autoFocus
                  maxLength={120}
                />
                <TextField label="Serial" value={plate.serial} onChange={setPlate('serial')} maxLength={80} />
                <TextField label="Year" value={plate.year} onChange={setPlate('year')} maxLength={20} />
                <TextField
                  label="Engine's serial"
                  value={plate.engineSerial}
                  onChange={setPlate('engineSerial')}
                  maxLength={80}
                />
                <TextField
                  label="Stands in"
                  placeholder="bay 2, yard"
                  value={plate.bay}
                  onChange={setPlate('bay')}
                  maxLength={60}
                />
              </div>
              <HereAlready serial={plate.serial} />
            </section>
            <section className={styles.section} aria-label="Who brings it">
              <h2>Who brings it</h2>
              <OwnerForm owner={owner} onChange={(now) => set({ owner: now })} />
            </section>
            <section className={styles.section} aria-label="What is said">
              <h2>What is said</h2>
              <VisitForm draft={visit} onChange={(now) => set({ visit: now })} />
            </section>
            <section className={styles.section} aria-label="The engine, and what it has">
              <h2>The engine, and what it has</h2>
              <LayoutForm layout={layout} onChange={(now) => set({ layout: now })} />
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
            {missing !== null && <p className="soft">{missing}</p>}
            <Button
              look="primary"
              wide
              keyCap={keyOf('takeIn.finish')}
              disabled={!isReady}
              onPress={() => void finish()}
            >
              Take it in, open the visit
            </Button>
            {!isEmpty && added === null && (
              <Button look="link" onPress={forget}>
                Start over
              </Button>
            )}
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
