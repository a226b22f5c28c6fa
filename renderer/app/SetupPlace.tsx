import { useState } from 'react';
import type { Person, Shop } from '../../shared-lib/model/shop.ts';
import { wordsFor, wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Breadcrumb, Header, HeaderEnd, HeaderMiddle } from '../ui/Header.tsx';
import laidOut from '../ui/panes.module.css';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import { useAppState } from './app-state.ts';
import { go } from './place.ts';
import styles from './SetupPlace.module.css';
import { paperOptions, unitOptions } from './shop-choices.ts';
import { readZone } from './time-zone.ts';
import { WhoChip } from './WhoChip.tsx';

/** The shop's particulars and the people in it. */
export function SetupPlace() {
  return (
    <>
      <Header>
        <Breadcrumb trail={[{ words: 'Floor', onGo: () => go({ name: 'floor' }) }]} here="Shop and people" />
        <HeaderMiddle />
        <HeaderEnd>
          <WhoChip />
        </HeaderEnd>
      </Header>
      <div className={classNames(laidOut.panes, styles.panes)}>
        <ShopPane />
        <PeoplePane />
      </div>
    </>
  );
}

function ShopPane() {
  const { shop, dataFolder } = useAppState();
  const change = useChange('shop.change');
  const [badZone, setBadZone] = useState(false);
  const save = (part: Partial<Shop>) => change.run(part);
  const general = change.error !== null && change.error.wire.field === undefined ? change.error : null;

  const saveZone = (typed: string) => {
    const timeZone = readZone(typed);
    setBadZone(timeZone === null);
    if (timeZone !== null) save({ timeZone });
  };

  return (
    <section className={styles.pane} aria-label="The shop">
      <h2>The shop</h2>
      <div className={styles.pair}>
        <TextField
          label="Name"
          value={shop.name}
          onCommit={(name) => save({ name })}
          error={wordsFor('name', change.error)}
          maxLength={200}
        />
        <TextField
          label="Telephone"
          value={shop.phone}
          onCommit={(phone) => save({ phone })}
          error={wordsFor('phone', change.error)}
          maxLength={60}
        />
      </div>
      <TextField
        label="Address"
        lines="many"
        value={shop.address}
        onCommit={(address) => save({ address })}
        error={wordsFor('address', change.error)}
        maxLength={400}
      />
      <TextField
        label="Your own words at the end of every statement"
        lines="many"
        value={shop.statementWords ?? ''}
        onCommit={(statementWords) => save({ statementWords })}
        hint="Read back with each decision, after what was understood. What you write here is yours, not advice in law."
        error={wordsFor('statementWords', change.error)}
        maxLength={1000}
      />
      <div className={styles.pair}>
        <Choice label="Units" options={unitOptions} value={shop.units} onChoose={(units) => save({ units })} />
        <Choice
          label="Paper for reports"
          options={paperOptions}
          value={shop.paper}
          onChoose={(paper) => save({ paper })}
        />
        <TextField
          label="Time zone"
          value={shop.timeZone}
          onCommit={saveZone}
          hint="Hours from UTC, for cameras that name none."
          maxLength={20}
          error={
            badZone
              ? { happened: 'Not a zone, such as +01:00.', kept: 'What you typed still stands here.' }
              : wordsFor('timeZone', change.error)
          }
        />
      </div>
      {general !== null && <ErrorNote {...wordsOf(general)} />}
      <p className={`soft ${styles.folder}`}>All of it is kept in {dataFolder}</p>
    </section>
  );
}

function PeoplePane() {
  const { people } = useAppState();
  const add = useChange('person.add');
  const [name, setName] = useState('');
  const [trade, setTrade] = useState('');
  const addPerson = () =>
    add.run({ name: name.trim(), trade: trade.trim() }, () => {
      setName('');
      setTrade('');
    });
  return (
    <section className={`${styles.pane} ${styles.second}`} aria-label="Who works here">
      <h2>Who works here</h2>
      {people.length === 0 && <p className="soft">Nobody yet. Without a name, what is written carries none.</p>}
      <ul className={styles.people}>
        {people.map((person) => (
          <PersonLine key={person.id} person={person} />
        ))}
      </ul>
      <form
        className={styles.add}
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim() !== '') addPerson();
        }}
      >
        <TextField label="New name" value={name} onChange={setName} maxLength={120} />
        <TextField label="Trade" value={trade} onChange={setTrade} maxLength={120} />
        <Button type="submit" disabled={name.trim() === '' || add.isRunning}>
          Add
        </Button>
      </form>
      {add.error !== null && <ErrorNote {...wordsOf(add.error)} />}
    </section>
  );
}

function PersonLine({ person }: { readonly person: Person }) {
  const change = useChange('person.change');
  return (
    <li>
      <div className={styles.person}>
        <TextField
          label="Name"
          value={person.name}
          onCommit={(name) => change.run({ id: person.id, name })}
          error={wordsFor('name', change.error)}
          maxLength={120}
        />
        <TextField
          label="Trade"
          value={person.trade}
          onCommit={(trade) => change.run({ id: person.id, trade })}
          maxLength={120}
        />
        <Toggle label="here" on={person.here} onChange={(here) => change.run({ id: person.id, here })} />
      </div>
      {change.error !== null && change.error.wire.field === undefined && <ErrorNote {...wordsOf(change.error)} />}
    </li>
  );
}
