import { useDeferredValue, useEffect, useRef, useState } from 'react';
import { machinesAtFirst } from '../../shared-lib/contract/first-questions.ts';
import type { FloorMachine } from '../../shared-lib/contract/machines.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { useCommand } from '../app/command-keys.ts';
import { keyOf } from '../app/commands.ts';
import { go } from '../app/place.ts';
import { searchFor, useSearchWish, useSearchWords } from '../app/search.ts';
import { WhoChip } from '../app/WhoChip.tsx';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Header, HeaderEnd } from '../ui/Header.tsx';
import { SearchField } from '../ui/SearchField.tsx';
import { Waiting } from '../ui/Waiting.tsx';
import { Wordmark } from '../ui/Wordmark.tsx';
import { EmptyFloor } from './EmptyFloor.tsx';
import styles from './FloorPlace.module.css';
import { GoneOut } from './GoneOut.tsx';
import { focusNextMachine, focusPreviousMachine } from './machine-focus.ts';
import { StandingHere } from './StandingHere.tsx';

const takeIn = () => go({ name: 'take-in' });

/** Where the program opens: the machines standing where they were left. */
export function FloorPlace() {
  const typed = useSearchWords();
  const find = useDeferredValue(typed.trim());
  const [most, setMost] = useState(machinesAtFirst);
  const answer = useAnswer('machine.floor', find === '' ? { most } : { find }, { keepPrevious: true });
  const search = useRef<HTMLInputElement>(null);
  const wish = useSearchWish();

  const focusSearch = () => search.current?.focus();
  useEffect(() => {
    if (wish > 0) search.current?.focus();
  }, [wish]);
  useCommand('floor.find', focusSearch);
  useCommand('floor.takeIn', takeIn);
  useCommand('floor.next', focusNextMachine);
  useCommand('floor.previous', () => focusPreviousMachine(focusSearch));
  useTypeToFind(search);

  const machines = answer.data;
  const isEmpty = machines !== undefined && machines.length === 0 && find === '';
  return (
    <>
      <Header tall>
        <div className={styles.brand}>
          <Wordmark />
          <h1 className={styles.brand}>Witness Mark</h1>
        </div>
        <div className={styles.search}>
          <SearchField
            ref={search}
            label="Find a machine, owner, serial or finding"
            value={typed}
            onChange={searchFor}
            onKeyDown={(event) => {
              if (event.key !== 'ArrowDown' && event.key !== 'Enter') return;
              event.preventDefault();
              if (event.key === 'Enter' && machines?.length === 1) openMachine(machines[0]);
              else focusNextMachine();
            }}
          />
        </div>
        <HeaderEnd>
          {!isEmpty && (
            <Button onPress={takeIn} keyCap={keyOf('floor.takeIn')}>
              Take in a machine
            </Button>
          )}
          <WhoChip />
        </HeaderEnd>
      </Header>
      {answer.isError && machines === undefined && (
        <div className={styles.standing}>
          <ErrorNote {...wordsOf(answer.error)}>
            <Button onPress={() => void answer.refetch()}>Ask again</Button>
          </ErrorNote>
        </div>
      )}
      {machines === undefined && !answer.isError && <Waiting words="Looking over the floor ..." />}
      {isEmpty && <EmptyFloor />}
      {machines !== undefined && !isEmpty && (
        <FloorPanes
          machines={machines}
          find={find}
          onMore={find === '' && machines.length >= most ? () => setMost(most * 4) : undefined}
        />
      )}
    </>
  );
}

/** A letter or digit typed anywhere on the floor that is no key of its own goes into the search. */
function useTypeToFind(search: { readonly current: HTMLInputElement | null }): void {
  useEffect(() => {
    const handleKeyDown = (event: KeyboardEvent) => {
      const isTyping = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      const isChord = event.ctrlKey || event.altKey || event.metaKey;
      if (event.defaultPrevented || isTyping || isChord || !/^[\p{L}\p{N}]$/u.test(event.key)) return;
      if (event.key.toUpperCase() === keyOf('floor.takeIn')) return;
      if (event.target instanceof Element && event.target.closest('[role=dialog]') !== null) return;
      search.current?.focus();
    };
    // On the way down, so that the focus has moved before the letter is put in.
    window.addEventListener('keydown', handleKeyDown, true);
    return () => window.removeEventListener('keydown', handleKeyDown, true);
  }, [search]);
}

function openMachine(machine: FloorMachine | undefined): void {
  if (machine !== undefined) go({ name: 'machine', machineId: machine.machine.id });
}

/** Rows of a pane that are drawn at once; the others follow while these are looked at. Ample for a large screen. */
const rowsAtFirst = 12;

interface FloorPanesProps {
  readonly machines: readonly FloorMachine[];
  readonly find: string;
  /** There are more than are shown. */
  readonly onMore: (() => void) | undefined;
}

function FloorPanes({ machines, find, onMore }: FloorPanesProps) {
  const rows = useDeferredValue(Number.POSITIVE_INFINITY, rowsAtFirst);
  const here = machines.filter(({ visitOpen, visitId }) => visitOpen || visitId === null);
  const out = machines.filter(({ visitOpen, visitId }) => !visitOpen && visitId !== null);
  return (
    <div className={classNames(styles.panes, out.length > 0 && styles.twoPanes)}>
      <section className={styles.standing} aria-label="Standing here">
        <h2>Standing here</h2>
        {here.length > 0 ? (
          <StandingHere machines={here.slice(0, rows)} />
        ) : (
          <p className={classNames(styles.none, 'soft')}>
            {find === '' ? 'Nothing stands here now.' : notFoundWords(find, out.length)}
          </p>
        )}
        {onMore !== undefined && <Button onPress={onMore}>Show more machines</Button>}
      </section>
      {out.length > 0 && <GoneOut machines={out.slice(0, rows)} />}
    </div>
  );
}

function notFoundWords(find: string, foundOutside: number): string {
  const words = `\u201C${find}\u201D`;
  return foundOutside > 0
    ? `${words} is on nothing that stands here, but on what has gone out.`
    : `${words} is on no machine, owner, complaint or finding. Escape shows them all again.`;
}
