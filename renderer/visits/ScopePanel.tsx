import { useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { type CoveredItem, coverItems } from '../../shared-lib/coverage/coverage.ts';
import { notExaminedReasons } from '../../shared-lib/notebook/gaps.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { PlacePicker } from '../findings/PlacePicker.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { countWords } from '../ui/words.ts';
import styles from './ScopePanel.module.css';

interface ScopePanelProps {
  readonly record: VisitRecord;
  readonly onClose: () => void;
}

/** What was agreed to look at: whether it was, why not, or that it does not apply. Each answer is one tap. */
export function ScopePanel({ record, onClose }: ScopePanelProps) {
  const add = useChange('scope.add');
  const [isAdding, setAdding] = useState(false);
  return (
    <Panel title="What was agreed to look at" onClose={onClose} wide>
      <p className="soft">
        An item counts as examined once a finding made by some method, or a reading, stands at it or below it.
      </p>
      <Rest record={record} />
      <ul>
        {coverItems(record).map((covered) => (
          <Item key={covered.item.id} covered={covered} record={record} />
        ))}
      </ul>
      {isAdding ? (
        <PlacePicker
          layout={record.layout.layout}
          onPick={(path) => add.run({ visitId: record.visit.id, path }, () => setAdding(false))}
          onClose={() => setAdding(false)}
        />
      ) : (
        <Button onPress={() => setAdding(true)}>Add an item</Button>
      )}
      {add.error !== null && <ErrorNote {...wordsOf(add.error)} />}
    </Panel>
  );
}

/** Fifty items are proposed and six are looked at: what is left has one reason more often than fifty. */
function Rest({ record }: { readonly record: VisitRecord }) {
  const answer = useChange('scope.answerRest');
  const open = coverItems(record).filter(
    ({ item, state }) => state === 'not-examined' && item.notExaminedBecause === null,
  );
  if (open.length < 2) return null;
  return (
    <section aria-label="All that is left" className={styles.item}>
      <p>
        <strong>{countWords(open.length, 'item')}</strong> nobody has come to yet. One reason for all of them:
      </p>
      <div className={styles.answers}>
        {notExaminedReasons.map((reason) => (
          <Button
            key={reason}
            disabled={answer.isRunning}
            label={`All that is left: ${reason}`}
            onPress={() => answer.run({ visitId: record.visit.id, notExaminedBecause: reason })}
          >
            {reason}
          </Button>
        ))}
      </div>
      {answer.error !== null && <ErrorNote {...wordsOf(answer.error)} />}
    </section>
  );
}

const stateWords = {
  examined: 'examined',
  'not-examined': 'not examined',
  'not-applicable': 'does not apply',
} as const;

function Item({ covered, record }: { readonly covered: CoveredItem; readonly record: VisitRecord }) {
  const { item, state } = covered;
  const change = useChange('scope.change');
  const remove = useChange('scope.remove');
  const because =
    state === 'not-examined' ? item.notExaminedBecause : state === 'not-applicable' ? item.notApplicableBecause : null;
  const spoken = speakComponent(item.path, record.layout.layout);
  return (
    <li className={styles.item}>
      <p>
        <strong>{spoken}</strong>{' '}
        <span className="soft">{because === null ? stateWords[state] : `${stateWords[state]}: ${because}`}</span>
      </p>
      {state !== 'examined' && (
        <fieldset className={styles.answers} aria-label={`Why not, ${spoken}`}>
          {notExaminedReasons.map((reason) => (
            <Button
              key={reason}
              pressed={item.notExaminedBecause === reason}
              disabled={change.isRunning}
              onPress={() => change.run({ id: item.id, notExaminedBecause: reason, notApplicableBecause: null })}
            >
              {reason}
            </Button>
          ))}
          <Button
            pressed={state === 'not-applicable'}
            disabled={change.isRunning}
            onPress={() =>
              change.run({ id: item.id, notExaminedBecause: null, notApplicableBecause: 'this machine has none' })
            }
          >
            does not apply
          </Button>
          <Button look="link" disabled={remove.isRunning} onPress={() => remove.run({ id: item.id })}>
            Not agreed after all
          </Button>
        </fieldset>
      )}
      {change.error !== null && <ErrorNote {...wordsOf(change.error)} />}
      {remove.error !== null && <ErrorNote {...wordsOf(remove.error)} />}
    </li>
  );
}
