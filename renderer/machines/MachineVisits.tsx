import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { go } from '../app/place.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { dateOnClock } from '../ui/shop-clock.ts';
import { UnitText } from '../ui/UnitText.tsx';
import { countWords, dateWords, numberWords } from '../ui/words.ts';
import styles from './MachinePlace.module.css';
import { TagRow } from './TagRow.tsx';

/** Every stay in the shop, newest first. */
export function MachineVisits({ visits }: { readonly visits: readonly MachineVisit[] }) {
  return (
    <>
      <div className={styles.head}>
        <h2>Visits</h2>
        <p className="soft">{countWords(visits.length, 'visit')}</p>
      </div>
      {visits.length === 0 ? (
        <p className="soft">None yet. A visit is one stay in the shop, from the door to the door.</p>
      ) : (
        <ul className={styles.visits}>
          {visits.map((entry, index) => (
            <VisitLine key={entry.visit.id} entry={entry} isNewest={index === 0} />
          ))}
        </ul>
      )}
    </>
  );
}

function VisitLine({ entry, isNewest }: { readonly entry: MachineVisit; readonly isNewest: boolean }) {
  const { visit, trueHours, tags, shots } = entry;
  const { shop } = useAppState();
  const change = useChange('visit.change');
  const isOpen = visit.leftAtMs === null;
  const left = visit.leftAtMs === null ? '' : `left ${dateWords(dateOnClock(visit.leftAtMs, shop.timeZone))}`;
  const facts = [left, shots === 0 ? 'no photo' : countWords(shots, 'photo')].filter((words) => words !== '');
  return (
    <li className={styles.visit}>
      <div>
        <button
          type="button"
          className={styles.title}
          onClick={() => go({ name: 'visit', visitId: visit.id, page: 'page' })}
        >
          {dateWords(visit.date)}
          {isOpen && <span className={styles.openWord}>, open</span>}
        </button>
        {visit.complaint !== '' && <p>{`\u201C${visit.complaint}\u201D`}</p>}
        <p className={styles.why}>{facts.join(', ')}</p>
      </div>
      <div className={styles.visitHours}>
        {trueHours !== null && (
          <>
            {visit.meter.estimate && <span className="soft">about </span>}
            <UnitText value={numberWords(trueHours)} unit="h" />
          </>
        )}
      </div>
      {tags.length > 0 && (
        <div className={styles.visitTags}>
          <TagRow tags={tags} />
        </div>
      )}
      {isNewest && (
        <div className={styles.move}>
          <Button
            look="link"
            disabled={change.isRunning}
            onPress={() => change.run({ id: visit.id, leftAtMs: isOpen ? Date.now() : null })}
          >
            {isOpen ? 'It has gone out' : 'It is still here after all'}
          </Button>
          {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
        </div>
      )}
    </li>
  );
}
