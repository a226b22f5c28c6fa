import { type KeyboardEvent, useDeferredValue, useMemo, useRef, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { sheetShelves } from '../../shared-lib/readings/sheet-places.ts';
import { sheetOf } from '../../shared-lib/sheets/index.ts';
import { worstVerdict } from '../../shared-lib/verdict/worst.ts';
import { useCommand } from '../app/command-keys.ts';
import { go } from '../app/place.ts';
import { classNames } from '../ui/class-names.ts';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { alongColumn, moveFocus } from '../ui/move-focus.ts';
import laidOut from '../ui/panes.module.css';
import { SearchField } from '../ui/SearchField.tsx';
import styles from './SheetList.module.css';
import { VerdictMark } from './VerdictMark.tsx';

interface SheetListProps {
  readonly record: VisitRecord;
}

/** Every sheet on its shelf, found by a word; beside it, what was taken in this visit. */
export function SheetList({ record }: SheetListProps) {
  const [typed, setTyped] = useState('');
  const find = useDeferredValue(typed);
  const part = record.visit.currentPart;
  const shelves = useMemo(() => sheetShelves(find, part), [find, part]);
  const list = useRef<HTMLDivElement>(null);
  const search = useRef<HTMLInputElement>(null);
  useCommand('visit.find', () => search.current?.focus());
  const open = (sheet: string) => go({ name: 'visit', visitId: record.visit.id, page: 'sheets', sheet });
  const handleSearchKey = (event: KeyboardEvent) => {
    // By what is typed, not by what is drawn already: quick fingers are ahead of the list.
    const first = sheetShelves(typed, part)[0]?.sheets[0];
    if (event.key === 'Enter' && first !== undefined && typed.trim() !== '') open(first.id);
    if (event.key === 'ArrowDown') list.current?.querySelector('button')?.focus();
  };
  return (
    <div className={classNames(laidOut.panes, styles.panes)}>
      <section className={styles.shelves} aria-label="Sheets">
        <div className={styles.head}>
          <h2>Which reading?</h2>
          <SearchField
            ref={search}
            label="Find a sheet"
            value={typed}
            onChange={setTyped}
            onKeyDown={handleSearchKey}
          />
        </div>
        {shelves.length === 0 && (
          <p className={styles.none}>No sheet measures that. “A size against its limit” takes any.</p>
        )}
        {/* biome-ignore lint/a11y/noStaticElementInteractions: arrows go along the buttons in it */}
        <div ref={list} className={styles.columns} onKeyDown={(event) => moveFocus(event, alongColumn)}>
          {shelves.map(({ group, sheets }) => (
            <section key={group} className={styles.shelf} aria-label={group}>
              <h3>{group}</h3>
              <ul>
                {sheets.map(({ id, name }) => (
                  <li key={id}>
                    <button type="button" className={styles.sheet} onClick={() => open(id)}>
                      {name}
                    </button>
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </div>
      </section>
      <TakenReadings record={record} />
    </div>
  );
}

function TakenReadings({ record }: SheetListProps) {
  const { readings, visit, layout } = record;
  return (
    <aside className={styles.taken} aria-label="Taken in this visit">
      <h2>Taken in this visit</h2>
      {readings.length === 0 ? (
        <EmptyPlace title="No reading yet" compact>
          <p className="soft">Pick a sheet, type what the gauge says. What was taken stands here with its verdict.</p>
        </EmptyPlace>
      ) : (
        <ul>
          {readings.map((reading) => {
            const name = sheetOf(reading.sheet)?.name ?? 'Reading';
            const verdict = worstVerdict(reading.results.map((line) => line.verdict));
            return (
              <li key={reading.id}>
                <button
                  type="button"
                  className={styles.reading}
                  onClick={() =>
                    go({
                      name: 'visit',
                      visitId: visit.id,
                      page: 'sheets',
                      sheet: reading.sheet,
                      readingId: reading.id,
                    })
                  }
                >
                  <span className={styles.name}>
                    {name}
                    <span className={styles.place}>{speakLocation(reading.at, layout.layout)}</span>
                  </span>
                  <VerdictMark verdict={verdict} />
                </button>
              </li>
            );
          })}
        </ul>
      )}
    </aside>
  );
}
