import { QueryClientProvider } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { machinesAtFirst } from '../../shared-lib/contract/first-questions.ts';
import { wordsOf } from '../api/client.ts';
import { listen } from '../api/listen.ts';
import { askAhead, createQueryClient, useAnswer } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { Waiting } from '../ui/Waiting.tsx';
import styles from './App.module.css';
import { AppStateContext } from './app-state.ts';
import { listenToKeys, runCommand } from './command-keys.ts';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { FirstRun } from './FirstRun.tsx';
import { Notices } from './Notices.tsx';
import { usePlace } from './place.ts';
import { fetchPlaces, PlaceView } from './places.tsx';
import { WindowCommands } from './WindowCommands.tsx';
import { WindowPanels } from './WindowPanels.tsx';

/** The floor is asked for together with the shop: the first screen shows both. */
function firstAnswers() {
  const client = createQueryClient();
  askAhead(client, 'app.state', {});
  askAhead(client, 'machine.floor', { most: machinesAtFirst });
  return client;
}

/** The whole window: one shop, one place at a time. */
export function App() {
  const [client] = useState(firstAnswers);
  useEffect(() => listen(client, runCommand), [client]);
  useEffect(listenToKeys, []);
  useEffect(() => {
    const idle = requestIdleCallback(fetchPlaces, { timeout: 4_000 });
    return () => cancelIdleCallback(idle);
  }, []);
  return (
    <QueryClientProvider client={client}>
      <div className={styles.window}>
        <Shop />
      </div>
    </QueryClientProvider>
  );
}

function Shop() {
  const state = useAnswer('app.state', {});
  const place = usePlace();

  if (state.data === undefined) {
    return (
      <>
        <Notices damage={null} />
        {state.isError ? (
          <NotOpened error={state.error} onAgain={() => void state.refetch()} />
        ) : (
          <Waiting words="Opening the shop ..." />
        )}
      </>
    );
  }
  return (
    <AppStateContext value={state.data}>
      <Notices damage={state.data.damage} />
      {state.data.started ? (
        <main className={styles.place}>
          <ErrorBoundary resetKey={JSON.stringify(place)}>
            <PlaceView place={place} />
          </ErrorBoundary>
          <WindowCommands />
        </main>
      ) : (
        <FirstRun />
      )}
      <WindowPanels />
    </AppStateContext>
  );
}

interface NotOpenedProps {
  readonly error: unknown;
  readonly onAgain: () => void;
}

function NotOpened({ error, onAgain }: NotOpenedProps) {
  const { happened, kept } = wordsOf(error);
  return (
    <main className={styles.place}>
      <EmptyPlace title="The shop could not be opened" actions={<Button onPress={onAgain}>Try again</Button>}>
        <p>{happened}</p>
        <p className="soft">{kept}</p>
      </EmptyPlace>
    </main>
  );
}
