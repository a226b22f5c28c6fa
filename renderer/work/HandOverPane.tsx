import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { VisitWork } from '../../shared-lib/contract/work.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { type HandOver, noHandOver } from '../../shared-lib/work/records.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { LadderRule } from '../ui/LadderRule.tsx';
import laidOut from '../ui/panes.module.css';
import { TextField } from '../ui/TextField.tsx';
import styles from './WorkPage.module.css';

interface HandOverPaneProps {
  readonly record: VisitRecord;
  readonly work: VisitWork;
}

const fields: readonly { readonly field: keyof HandOver; readonly label: string; readonly lines: 'one' | 'many' }[] = [
  { field: 'proved', label: 'What was proved', lines: 'many' },
  { field: 'limits', label: 'How it may be used, and within which limits', lines: 'many' },
  { field: 'watch', label: 'What to watch', lines: 'many' },
  { field: 'comeBack', label: 'When to come back', lines: 'one' },
  { field: 'oldParts', label: 'Parts taken out: kept, shown or taken away', lines: 'one' },
  { field: 'handedTo', label: 'Handed to', lines: 'one' },
];

/** What is said when the machine goes, beside what it goes with. */
export function HandOverPane({ record, work }: HandOverPaneProps) {
  const visitId = record.visit.id;
  const write = useChange('handOver.write');
  const now = work.handOver ?? noHandOver;
  const fromFindings = work.left
    .flatMap(({ findingId, number }) => {
      const watch = record.findings.find(({ id }) => id === findingId)?.watchFor.trim() ?? '';
      return watch === '' ? [] : [`Finding ${number}: ${watch}`];
    })
    .join('\n\n');
  const suggested: Partial<Record<keyof HandOver, { readonly words: string; readonly text: string }>> = {
    ...(fromFindings === '' ? {} : { watch: { words: 'Take what the findings say', text: fromFindings } }),
    ...(record.owner === null ? {} : { handedTo: { words: record.owner.name, text: record.owner.name } }),
  };
  return (
    <aside className={laidOut.side} aria-label="Hand-over">
      <h2 className={styles.ruled}>Hand-over</h2>
      <Left work={work} />
      {fields.map(({ field, label, lines }) => {
        const offer = suggested[field];
        return (
          <div key={field}>
            <TextField
              label={label}
              value={now[field]}
              onCommit={(text) => write.run({ visitId, [field]: text.trim() })}
              lines={lines}
              maxLength={lines === 'many' ? 2000 : 200}
            />
            {offer !== undefined && now[field] === '' && (
              <Button look="link" wraps onPress={() => write.run({ visitId, [field]: offer.text })}>
                {offer.words}
              </Button>
            )}
          </div>
        );
      })}
      {write.error !== null && <ErrorNote {...wordsOf(write.error)} />}
      <p className="soft small">
        It prints as a page of its own, to go with the machine. What is still there stands on it by itself.
      </p>
    </aside>
  );
}

/** What the machine goes out with, the worst first: words cannot hide it. */
function Left({ work: { left, items } }: { readonly work: VisitWork }) {
  if (items.length === 0) return <p className="soft">No work is written down: it goes as it stands on the page.</p>;
  if (left.length === 0) return <p>Nothing of what was found is left.</p>;
  const tiers = [...new Set(left.map(({ tier }) => tier))];
  return (
    <section aria-label="Still there">
      <h3>It goes out with</h3>
      {tiers.map((tier) => (
        <div key={tier}>
          <LadderRule rung={tier} word={tierWords(tier).heading} />
          <ul>
            {left
              .filter((line) => line.tier === tier)
              .map(({ findingId, number, state, title }) => (
                <li key={findingId} className={styles.left}>
                  <TagPlate number={number} tier={tier} state={state} label={`Finding ${number}:`} />
                  <span>{title}</span>
                </li>
              ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
