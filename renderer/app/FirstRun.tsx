import { useState } from 'react';
import type { Shop } from '../../shared-lib/model/shop.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { BlankPlate } from '../ui/BlankPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Header, HeaderMiddle } from '../ui/Header.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Wordmark } from '../ui/Wordmark.tsx';
import { useAppState } from './app-state.ts';
import styles from './FirstRun.module.css';
import { paperOptions, unitOptions } from './shop-choices.ts';
import { readZone, zoneOfThisComputer } from './time-zone.ts';

/** The first time: a made-up shop to look around in, or one's own. */
export function FirstRun() {
  const [isOwn, setIsOwn] = useState(false);
  return (
    <>
      <Header tall>
        <span className={styles.brand}>
          <Wordmark />
          Witness Mark
        </span>
        <HeaderMiddle />
      </Header>
      <main className={styles.place}>
        {isOwn ? <OwnShop onBack={() => setIsOwn(false)} /> : <FirstChoice onOwn={() => setIsOwn(true)} />}
      </main>
    </>
  );
}

function FirstChoice({ onOwn }: { readonly onOwn: () => void }) {
  const begin = useChange('app.begin');
  const { dataFolder } = useAppState();
  return (
    <EmptyPlace
      title="Nothing is written here yet"
      drawing={<BlankPlate />}
      actions={
        <>
          <Button look="primary" onPress={onOwn} disabled={begin.isRunning}>
            Open your own shop
          </Button>
          <Button onPress={() => begin.run({ with: 'demo' })} disabled={begin.isRunning}>
            Look around a made-up one
          </Button>
        </>
      }
    >
      <p className={styles.lead}>
        A shop holds the machines you take in, what you find on them, and the reports you hand over. It is one folder on
        this computer, and it is yours.
      </p>
      <p className="soft">{dataFolder}</p>
      {begin.isRunning && <p role="status">Laying out the made-up shop: three machines with their photos ...</p>}
      {begin.error !== null && <ErrorNote {...wordsOf(begin.error)} />}
    </EmptyPlace>
  );
}

function OwnShop({ onBack }: { readonly onBack: () => void }) {
  const { shop } = useAppState();
  const [name, setName] = useState('');
  const [person, setPerson] = useState('');
  const [trade, setTrade] = useState('mechanic');
  const [units, setUnits] = useState<Shop['units']>(shop.units);
  const [paper, setPaper] = useState<Shop['paper']>(shop.paper);
  const [zone, setZone] = useState(zoneOfThisComputer);
  const begin = useChange('app.begin');
  const changeShop = useChange('shop.change');
  const addPerson = useChange('person.add');
  const switchTo = useChange('person.switch');
  const [isOpening, setIsOpening] = useState(false);
  const timeZone = readZone(zone);
  const refused = changeShop.error ?? addPerson.error ?? switchTo.error ?? begin.error;

  const open = async () => {
    if (timeZone === null || isOpening) return;
    setIsOpening(true);
    try {
      await changeShop.runOrThrow({ name: name.trim(), units, paper, timeZone });
      if (person.trim() !== '') {
        const added = await addPerson.runOrThrow({ name: person.trim(), trade: trade.trim() });
        await switchTo.runOrThrow({ id: added.id });
      }
      await begin.runOrThrow({ with: 'empty' });
    } catch {
      // Each change keeps its own refusal, shown under the form.
      setIsOpening(false);
    }
  };

  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        void open();
      }}
    >
      <h1>Your shop</h1>
      <p className="soft">All of it can be changed later; none of it is needed to begin.</p>
      <div className={styles.pair}>
        <TextField
          label="Name of the shop"
          value={name}
          onChange={setName}
          hint="Stands on every report."
          autoFocus
          maxLength={200}
        />
        <TextField
          label="Time zone"
          value={zone}
          onChange={setZone}
          hint="Hours from UTC, for cameras that name none."
          maxLength={20}
          error={
            timeZone === null
              ? { happened: 'Not a zone, such as +01:00.', kept: 'What you typed still stands here.' }
              : undefined
          }
        />
        <TextField
          label="Who works here"
          value={person}
          onChange={setPerson}
          hint="Your name goes on what you write."
          maxLength={120}
        />
        <TextField label="Trade" value={trade} onChange={setTrade} maxLength={120} />
        <Choice label="Units" options={unitOptions} value={units} onChoose={setUnits} />
        <Choice label="Paper for reports" options={paperOptions} value={paper} onChoose={setPaper} />
      </div>
      {refused !== null && <ErrorNote {...wordsOf(refused)} />}
      <div className={styles.actions}>
        <Button look="primary" type="submit" disabled={isOpening || timeZone === null}>
          Open the shop
        </Button>
        <Button look="link" onPress={onBack}>
          Back
        </Button>
      </div>
    </form>
  );
}
