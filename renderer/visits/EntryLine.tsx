import type { ReactNode } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Entry } from '../../shared-lib/notebook/entries.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { useAppState } from '../app/app-state.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { timeWords } from '../ui/shop-clock.ts';
import styles from './EntryLine.module.css';
import { ReadingWords } from './ReadingWords.tsx';

interface EntryLineProps {
  readonly entry: Entry;
  readonly record: VisitRecord;
  readonly onFinding: (findingId: string) => void;
}

/** One entry of the page, sitting on the ruling. */
export function EntryLine({ entry, record, onFinding }: EntryLineProps) {
  const { shop } = useAppState();
  return (
    <li className={styles.entry}>
      <time className={styles.time}>{timeWords(entry.atMs, shop.timeZone)}</time>
      <div className={styles.body}>{bodyOf(entry, record, onFinding)}</div>
    </li>
  );
}

function bodyOf(entry: Entry, record: VisitRecord, onFinding: (id: string) => void): ReactNode {
  switch (entry.kind) {
    case 'complaint':
      return (
        <p>
          <em>“{entry.words}”</em> <span className="soft">{entry.said}</span>
        </p>
      );
    case 'received':
      return entry.lines.map((line) => <p key={line}>{line.charAt(0).toUpperCase() + line.slice(1)}</p>);
    case 'suspicion':
      return (
        <button
          type="button"
          className={styles.finding}
          onClick={() => go({ name: 'visit', visitId: record.visit.id, page: 'causes' })}
        >
          <span className="soft">Suspected:</span>
          {entry.givenUpBecause === null ? <span>{entry.what}</span> : <s>{entry.what}</s>}
          {entry.givenUpBecause !== null && <span className="soft">given up: {entry.givenUpBecause}</span>}
          {entry.foundBy !== null && <span className="soft">found: finding {entry.foundBy}</span>}
        </button>
      );
    case 'shots':
      return <Burst entry={entry} record={record} />;
    case 'reading':
      return <ReadingEntry entry={entry} record={record} />;
    case 'finding':
      return <FindingWords entry={entry} onFinding={onFinding} />;
  }
}

interface ReadingEntryProps {
  readonly entry: Extract<Entry, { kind: 'reading' }>;
  readonly record: VisitRecord;
}

/** A reading leads to the sheet it was written on. */
function ReadingEntry({ entry, record }: ReadingEntryProps) {
  const { id, visitId, sheet } = entry.reading;
  return (
    <button
      type="button"
      className={styles.reading}
      onClick={() => go({ name: 'visit', visitId, page: 'sheets', sheet, readingId: id })}
    >
      <ReadingWords reading={entry.reading} layout={record.layout.layout} />
    </button>
  );
}

function Burst({ entry, record }: { readonly entry: Extract<Entry, { kind: 'shots' }>; readonly record: VisitRecord }) {
  const { shots } = entry;
  const [first] = shots;
  const last = shots.at(-1);
  if (first === undefined || last === undefined) return null;
  const part = first.component === null ? 'part not said' : speakComponent(first.component, record.layout.layout);
  const numbers = first === last ? `photo ${first.sequence}` : `photos ${first.sequence} to ${last.sequence}`;
  return (
    <div className={styles.burst}>
      <ul className={styles.thumbs} aria-label={`${part}, ${numbers}`}>
        {shots.slice(0, 6).map((shot) => (
          <li key={shot.id}>
            <button
              type="button"
              className={styles.thumb}
              aria-label={`Photo ${shot.sequence}${shot.caption === '' ? '' : `, ${shot.caption}`}`}
              onClick={() => go({ name: 'visit', visitId: shot.visitId, page: 'photos', shotId: shot.id })}
            >
              <img src={`photo://thumb/${shot.digest}`} alt="" loading="lazy" decoding="async" />
            </button>
          </li>
        ))}
      </ul>
      <p className={styles.burstWords}>
        {part}
        <span className="soft">
          {numbers}
          {shots.length > 6 && `, ${shots.length - 6} more behind`}
        </span>
      </p>
    </div>
  );
}

interface FindingWordsProps {
  readonly entry: Extract<Entry, { kind: 'finding' }>;
  readonly onFinding: (findingId: string) => void;
}

function FindingWords({ entry, onFinding }: FindingWordsProps) {
  const { superseded, title, tier, number, state, isObservation } = entry;
  return (
    <button type="button" className={styles.finding} onClick={() => onFinding(entry.findingId)}>
      {tier !== null && <TagPlate number={number} tier={tier} state={state} label={`Finding ${number}:`} />}
      {tier === null && !isObservation && superseded === null && (
        <TagPlate number={number} tier={4} state="none-found" />
      )}
      {superseded === null ? <span>{title}</span> : <s>{title}</s>}
      {isObservation && <span className="soft">noted, not ranked</span>}
      {superseded !== null && (
        <span className="soft">
          superseded by {superseded.byNumber}
          {superseded.because !== '' && `: ${superseded.because}`}
        </span>
      )}
    </button>
  );
}
