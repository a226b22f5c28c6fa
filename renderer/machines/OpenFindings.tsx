import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import type { Standing, StandingLine } from '../../shared-lib/contract/standing.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { listed } from '../../shared-lib/wording/listed.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { LadderRule } from '../ui/LadderRule.tsx';
import { dateWords } from '../ui/words.ts';
import styles from './MachinePlace.module.css';
import { TagRow } from './TagRow.tsx';
import { placeWords } from './visit-words.ts';

interface OpenFindingsProps {
  /** Newest first. */
  readonly visits: readonly MachineVisit[];
}

/**
 * What is open, in the order of the newest visit's standing. A visit that has found nothing yet does not hide what the one
 * before it left open.
 */
export function OpenFindings({ visits }: OpenFindingsProps) {
  const [newest] = visits;
  const shown = visits.find(({ tags }) => tags.length > 0) ?? newest;
  const visitId = shown?.visit.id;
  const standing = useAnswer('standing.get', { visitId: visitId ?? '' }, { when: visitId !== undefined });
  return (
    <>
      <div className={styles.head}>
        <h2>Open findings</h2>
        {shown !== undefined && <p className="soft">{`as of ${dateWords(shown.visit.date)}`}</p>}
      </div>
      {newest === undefined && (
        <EmptyPlace compact title="It has not been looked at yet">
          <p>What is found on it stands here, the worst first, from the first visit on.</p>
        </EmptyPlace>
      )}
      {standing.isError && <ErrorNote {...wordsOf(standing.error)} />}
      {newest !== undefined && shown !== newest && (
        <p
          className={styles.stillOpen}
        >{`The visit of ${dateWords(newest.visit.date)} has no finding yet. These were left open before it.`}</p>
      )}
      {shown !== undefined && standing.data !== undefined && (
        <Ladder standing={standing.data} visitId={shown.visit.id} />
      )}
    </>
  );
}

interface LadderProps {
  readonly standing: Standing;
  readonly visitId: string;
}

function Ladder({ standing, visitId }: LadderProps) {
  const { lines, notLookedAt } = standing;
  const byTier = Map.groupBy(lines, ({ tier }) => tier);
  const tiersInUse = [...byTier.keys()].sort((a, b) => a - b);
  return (
    <>
      {lines.length === 0 && (
        <EmptyPlace compact title="No finding is written down">
          <p>That says nothing of what was not looked at.</p>
        </EmptyPlace>
      )}
      {tiersInUse.map((tier) => (
        <section key={tier} aria-label={tierWords(tier).heading}>
          <LadderRule rung={tier} word={tierWords(tier).heading} />
          <ul>
            {(byTier.get(tier) ?? []).map((line) => (
              <FindingLine key={line.findingId} line={line} visitId={visitId} />
            ))}
          </ul>
        </section>
      ))}
      {notLookedAt.length > 0 && <NotLookedAtList places={notLookedAt} />}
    </>
  );
}

function FindingLine({ line, visitId }: { readonly line: StandingLine; readonly visitId: string }) {
  const wasMoved = line.place !== line.computedPlace;
  return (
    <li className={styles.line}>
      <TagRow tags={[line]} />
      <div>
        <button
          type="button"
          className={styles.title}
          onClick={() => go({ name: 'visit', visitId, page: 'page', findingId: line.findingId })}
        >
          {line.title}
        </button>
        <p className={styles.why}>{line.why}</p>
        {line.missing.length > 0 && <p className={styles.why}>{`Unfinished: ${line.missing.join(', ')}.`}</p>}
      </div>
      <div className={styles.rank}>
        <b>{placeWords(line.place)}</b>
        {wasMoved && <span>{`computed ${placeWords(line.computedPlace)}`}</span>}
      </div>
    </li>
  );
}

/** Those with a reason one by one; the others, which nobody has come to yet, in one breath. */
function NotLookedAtList({ places }: { readonly places: Standing['notLookedAt'] }) {
  const withReason = places.filter(({ because }) => because !== null);
  const others = places.filter(({ because }) => because === null);
  return (
    <section aria-label="Not looked at">
      <LadderRule rung="not-looked-at" word="Not looked at" />
      <ul className={styles.unseen}>
        {withReason.map(({ path, spoken, because }) => (
          <li key={path}>
            <b>{spoken}</b>
            {`: ${because}`}
          </li>
        ))}
        {others.length > 0 && (
          <li>
            {withReason.length > 0 ? 'Nor yet: ' : ''}
            {listed(others.map(({ spoken }, index) => (index === 0 ? spoken : uncapital(spoken))))}.
          </li>
        )}
      </ul>
    </section>
  );
}

function uncapital(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
