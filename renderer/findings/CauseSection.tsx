import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { titleOf } from '../../shared-lib/ranking/title.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './FindingCard.module.css';
import { LinkLine } from './LinkLine.tsx';
import { WhenFields } from './WhenFields.tsx';

interface CauseSectionProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
}

type Direction = 'leads-to' | 'comes-from';

/** What led to it and what it led to, each link with how sure it is. */
export function CauseSection({ record, finding }: CauseSectionProps) {
  const { layout } = record.layout;
  const link = useChange('finding.link');
  const [direction, setDirection] = useState<Direction | null>(null);
  const [certainty, setCertainty] = useState<'confirmed' | 'suspected'>('suspected');
  const [join, setJoin] = useState<'and' | 'or'>('and');
  const nameOf = (id: string) => {
    const other = record.findings.find((each) => each.id === id);
    return other === undefined ? '' : `${other.number}, ${titleOf(other, layout)}`;
  };
  const own = record.links.filter(({ fromId, toId }) => fromId === finding.id || toId === finding.id);
  const linked = new Set(own.flatMap(({ fromId, toId }) => [fromId, toId]));
  const others = record.findings.filter(
    ({ id, binned, kind, state }) =>
      !binned && kind === 'condition' && state !== 'none-found' && id !== finding.id && !linked.has(id),
  );
  const add = (otherId: string) => {
    const ends =
      direction === 'leads-to' ? { fromId: finding.id, toId: otherId } : { fromId: otherId, toId: finding.id };
    link.run({ ...ends, certainty, join }, () => setDirection(null));
  };
  const { error } = link;
  return (
    <section className={styles.section} aria-label="What led to what">
      <h3 className={styles.heading}>What led to what</h3>
      {own.length > 0 && (
        <ul className={styles.list}>
          {own.map((each) => (
            <LinkLine
              key={each.id}
              record={record}
              link={each}
              words={each.fromId === finding.id ? `leads to ${nameOf(each.toId)}` : `comes from ${nameOf(each.fromId)}`}
              isOneOfSeveral={record.links.filter(({ toId }) => toId === each.toId).length > 1}
            />
          ))}
        </ul>
      )}
      {direction === null && others.length > 0 && (
        <div className={styles.row}>
          <Button onPress={() => setDirection('leads-to')}>It leads to</Button>
          <Button onPress={() => setDirection('comes-from')}>It comes from</Button>
        </div>
      )}
      {others.length === 0 && own.length === 0 && <p className={styles.small}>No other finding in this visit yet.</p>}
      {direction !== null && (
        <>
          <Choice
            label="How sure is that"
            value={certainty}
            onChoose={setCertainty}
            options={[
              { value: 'suspected', words: 'suspected' },
              { value: 'confirmed', words: 'confirmed' },
            ]}
          />
          {direction === 'comes-from' && (
            <Choice
              label="Where there are several causes"
              value={join}
              onChoose={setJoin}
              options={[
                { value: 'and', words: 'together with the others' },
                { value: 'or', words: 'this or another' },
              ]}
            />
          )}
          <ul className={styles.list}>
            {others.map((other) => (
              <li key={other.id}>
                <span>{nameOf(other.id)}</span>
                <Button onPress={() => add(other.id)} disabled={link.isRunning}>
                  This one
                </Button>
              </li>
            ))}
          </ul>
          <Button look="link" onPress={() => setDirection(null)}>
            Leave it
          </Button>
        </>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      <WhenFields finding={finding} />
    </section>
  );
}
